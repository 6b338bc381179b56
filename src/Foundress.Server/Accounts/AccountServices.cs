using Foundress.Accounts;
using Foundress.Accounts.Model;
using Foundress.Server.Security;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;

namespace Foundress.Server.Accounts;

/// <summary>What a server with accounts is made of.</summary>
internal static class AccountServices
{
    /// <summary>How long a sign-in lasts without a request. Exchange goes on by the device's own secret.</summary>
    public static readonly TimeSpan Session = TimeSpan.FromHours(12);

    public static void AddAccounts(this IServiceCollection services, AccountsDatabase database, Reach reach, RateLimits limits)
    {
        services.AddSingleton(_ => database);
        services.AddScoped(_ => database.Open());
        services.AddSingleton<Members>();
        services.AddSingleton<OneTimeLinks>();
        services.AddSingleton<Devices>();
        services.AddSingleton<CalendarLinks>();
        services.AddSingleton<SignInLog>();
        services.AddHostedService<SignInDuty>();
        services.AddSingleton<PassedOnLog>();
        services.AddSingleton<EntryGate>();
        services.AddScoped<Entrance>();
        services.AddScoped<People>();
        services.AddHttpContextAccessor();
        // They lie in the file of accounts, which only its owner can read.
        services.AddLogging(log => log.AddFilter("Microsoft.AspNetCore.DataProtection.KeyManagement.XmlKeyManager", LogLevel.Error));
        services.AddDataProtection().SetApplicationName("Foundress").PersistKeysToDbContext<AccountsContext>();
        AddIdentity(services, reach);
        services.AddAuthorizationBuilder().SetFallbackPolicy(
            new AuthorizationPolicyBuilder(IdentityConstants.ApplicationScheme, DeviceScheme.Name, CalendarScheme.Name).AddRequirements(new AccessRequirement()).Build());
        services.AddSingleton<IAuthorizationHandler, AccessHandler>();
        services.AddSingleton<IAuthorizationMiddlewareResultHandler, AccessAnswers>();
        services.AddRateLimiter(limits.Apply);
    }

    private static void AddIdentity(IServiceCollection services, Reach reach)
    {
        services.AddSingleton<ILookupNormalizer, PersonNames>();
        services.AddIdentityCore<Person>(identity =>
            {
                identity.Stores.SchemaVersion = IdentitySchemaVersions.Version3;
                identity.User.AllowedUserNameCharacters = string.Empty;
                identity.Lockout.MaxFailedAccessAttempts = 5;
                identity.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(15);
                identity.Password = new PasswordOptions { RequiredLength = 1, RequireDigit = false, RequireLowercase = false, RequireNonAlphanumeric = false, RequireUppercase = false };
            })
            .AddEntityFrameworkStores<AccountsContext>()
            .AddPasswordValidator<PasswordRules>()
            .AddErrorDescriber<PeopleErrors>()
            .AddSignInManager();
        services.Configure<IdentityPasskeyOptions>(passkeys =>
        {
            passkeys.ServerDomain = reach.Name ?? "localhost";
            // A passkey stands alone here, so the device must make sure that its owner holds it.
            passkeys.UserVerificationRequirement = "required";
            passkeys.ResidentKeyRequirement = "required";
            passkeys.ValidateOrigin = context => ValueTask.FromResult(
                !context.CrossOrigin && context.Origin == $"{context.HttpContext.Request.Scheme}://{context.HttpContext.Request.Host.Value}");
        });
        var prefix = reach.Name is null ? "" : "__Host-";
        var authentication = services.AddAuthentication(IdentityConstants.ApplicationScheme);
        authentication.AddCookie(IdentityConstants.ApplicationScheme, cookie =>
        {
            Guard(cookie, prefix + "foundress", reach);
            cookie.ExpireTimeSpan = Session;
            cookie.SlidingExpiration = true;
            cookie.Events.OnValidatePrincipal = ValidateAsync;
            // Renewed the first time already, or replaced since by another's sign-in, which must stand.
            cookie.Events.OnCheckSlidingExpiration = static context =>
            {
                if (StillAllowed.IsAsking(context.HttpContext))
                    context.ShouldRenew = false;
                return Task.CompletedTask;
            };
        });
        // Holds the challenge of a passkey while the person touches their key.
        authentication.AddCookie(IdentityConstants.TwoFactorUserIdScheme, cookie =>
        {
            Guard(cookie, prefix + "foundress-challenge", reach);
            cookie.ExpireTimeSpan = TimeSpan.FromMinutes(5);
        });
        authentication.AddScheme<AuthenticationSchemeOptions, DeviceScheme>(DeviceScheme.Name, null);
        authentication.AddScheme<AuthenticationSchemeOptions, CalendarScheme>(CalendarScheme.Name, null);
    }

    private static void Guard(CookieAuthenticationOptions cookie, string name, Reach reach)
    {
        cookie.Cookie.Name = name;
        cookie.Cookie.HttpOnly = true;
        cookie.Cookie.SameSite = SameSiteMode.Strict;
        cookie.Cookie.SecurePolicy = reach.Name is null ? CookieSecurePolicy.SameAsRequest : CookieSecurePolicy.Always;
        cookie.Cookie.IsEssential = true;
        cookie.Cookie.Path = "/";
        // The access rules answer those who are not let through; there is no page to be sent to.
        cookie.Events.OnRedirectToLogin = static _ => Task.CompletedTask;
        cookie.Events.OnRedirectToAccessDenied = static _ => Task.CompletedTask;
    }

    // At every request: a changed password or an account taken away ends sessions at once.
    private static async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        var signIn = context.HttpContext.RequestServices.GetRequiredService<SignInManager<Person>>();
        if (await signIn.ValidateSecurityStampAsync(context.Principal) is null)
            context.RejectPrincipal();
    }
}
