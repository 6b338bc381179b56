using System.Security.Claims;
using Foundress.Accounts;
using Foundress.Server.Accounts;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Identity;

namespace Foundress.Server.Security;

/// <summary>
/// Holds every request to <see cref="AccessRules"/>. What somebody may do is read anew each time, so that a role taken away
/// is gone at once.
/// </summary>
internal sealed class AccessHandler(Members members) : AuthorizationHandler<AccessRequirement>
{
    protected override async Task HandleRequirementAsync(AuthorizationHandlerContext context, AccessRequirement requirement)
    {
        var http = (HttpContext)context.Resource!;
        var caller = await CallerAsync(http);
        http.Features.Set(caller);
        // Where there is nothing, there is nothing to keep from anybody.
        if (http.GetEndpoint() is { } endpoint && Judge(http, AccessRules.Of(endpoint), caller) is { } refusal)
            http.Features.Set(refusal);
        else
            context.Succeed(requirement);
    }

    private static Refusal? Judge(HttpContext http, AccessRule? rule, Caller? caller)
    {
        if (rule is null)
            return Forbidden(AccessTexts.NobodyMay);
        if (rule.Access == Access.Public)
            return null;
        if (caller is null)
            return new(StatusCodes.Status401Unauthorized, CalendarScheme.IsTried(http) ? AccessTexts.NoCalendar : AccessTexts.SignIn);
        if (caller.ByCookie && !IsRead(http.Request.Method) && !SameOriginWrites.ComesFromOwnPage(http.Request))
            return Forbidden(AccessTexts.FromNoPage);
        if (rule.Access == Access.Known)
            return null;
        if (!caller.HasSignedIn && rule.Access is Access.SignedIn or Access.Manage or Access.Administer)
            return new(StatusCodes.Status401Unauthorized, AccessTexts.SignInAgain);
        if (rule.Access == Access.SignedIn)
            return null;
        if (rule.Access == Access.Administer)
            return caller.Standing.IsAdministrator ? null : Forbidden(AccessTexts.AdministratorOnly);
        var operation = rule.Operation ?? http.GetRouteValue("operation") as string ?? "";
        var least = rule.Access switch { Access.Read => Role.Reader, Access.Write => Role.Helper, _ => Role.Keeper };
        if (caller.Standing.Has(operation, least))
            return null;
        // The same words whether the operation is another's or is not there at all.
        return Forbidden(caller.Standing.Has(operation, Role.Reader)
            ? TooLittle(caller.Standing.Name, caller.Standing.Roles[operation], operation, least)
            : AccessTexts.FormatNoMember(caller.Standing.Name, operation));
    }

    private static string TooLittle(string name, Role role, string operation, Role least) => (role, least) switch
    {
        (Role.Helper, _) => AccessTexts.FormatHelperMayNotKeep(name, operation),
        (_, Role.Helper) => AccessTexts.FormatReaderMayNotHelp(name, operation),
        _ => AccessTexts.FormatReaderMayNotKeep(name, operation),
    };

    private async Task<Caller?> CallerAsync(HttpContext http)
    {
        if (AccessRules.IsAsset(http.GetEndpoint()))
            return null;
        var session = http.User.Identities.FirstOrDefault(identity => identity.AuthenticationType == IdentityConstants.ApplicationScheme);
        var device = http.User.Identities.FirstOrDefault(identity => identity.AuthenticationType == DeviceScheme.Name);
        var calendar = http.User.Identities.FirstOrDefault(identity => identity.AuthenticationType == CalendarScheme.Name);
        // Whoever has signed in counts, also on a device that another enrolled; but an address with a secret in it is asked for its own sake.
        var identity = calendar ?? session ?? device;
        if (!Guid.TryParse(identity?.FindFirst(ClaimTypes.NameIdentifier)?.Value, out var person)
            || await members.StandingOfAsync(person, http.RequestAborted) is not { } standing)
            return null;
        if (calendar is not null)
            return new Caller(standing, false, null, null, false);
        var isOwnDevice = device?.FindFirst(ClaimTypes.NameIdentifier)?.Value == identity!.FindFirst(ClaimTypes.NameIdentifier)!.Value;
        return new Caller(
            standing, session is not null,
            isOwnDevice ? device!.FindFirst(DeviceScheme.NameClaim)!.Value : null,
            isOwnDevice ? Guid.Parse(device!.FindFirst(DeviceScheme.IdClaim)!.Value) : null,
            session is not null || device!.HasClaim(DeviceScheme.CookieClaim, "1"));
    }

    private static bool IsRead(string method) => HttpMethods.IsGet(method) || HttpMethods.IsHead(method);

    private static Refusal Forbidden(string detail) => new(StatusCodes.Status403Forbidden, detail);
}
