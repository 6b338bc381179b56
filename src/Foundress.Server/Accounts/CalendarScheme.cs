using System.Security.Claims;
using System.Text.Encodings.Web;
using Foundress.Accounts;
using Foundress.Server.Security;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;

namespace Foundress.Server.Accounts;

/// <summary>
/// Lets a calendar program in by the secret in its address, since it can neither sign in nor send a header: to the calendars
/// and to nothing else.
/// </summary>
internal sealed class CalendarScheme(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, CalendarLinks links, SignInLog log)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    public const string Name = "Calendar";

    /// <summary>The field of the address that holds the secret.</summary>
    public const string Field = "key";

    /// <summary>Whether a request comes with such a secret to where one is taken.</summary>
    public static bool IsTried(HttpContext http) =>
        AccessRules.Of(http.GetEndpoint()) is { ByCalendarLink: true } && http.Request.Query[Field].ToString().Length > 0;

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        if (!IsTried(Context))
            return AuthenticateResult.NoResult();
        var (link, afterAWhile) = await links.FindAsync(Request.Query[Field].ToString(), Context.RequestAborted);
        if (link is null)
            return AuthenticateResult.NoResult();
        if (afterAWhile)
            await log.NoteCalendarAsync(link.PersonId, Context.Connection.RemoteIpAddress, Context.RequestAborted);
        var identity = new ClaimsIdentity([new(ClaimTypes.NameIdentifier, link.PersonId.ToString())], Name);
        return AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), Name));
    }
}
