using System.Security.Claims;
using System.Text.Encodings.Web;
using Foundress.Accounts;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;

namespace Foundress.Server.Accounts;

/// <summary>Lets an enrolled device in by its secret: from a cookie that scripts cannot read, or as a bearer token.</summary>
internal sealed class DeviceScheme(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, Devices devices)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    public const string Name = "Device";
    public const string NameClaim = "device";
    public const string IdClaim = "device-id";
    public const string CookieClaim = "device-cookie";

    private const string Bearer = "Bearer ";

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        var header = Request.Headers.Authorization.ToString();
        var byBearer = header.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase);
        var secret = byBearer ? header[Bearer.Length..].Trim() : DeviceCookie.Read(Context);
        if (string.IsNullOrEmpty(secret))
            return AuthenticateResult.NoResult();
        if (await devices.FindAsync(secret, Context.RequestAborted) is not { } device)
            return AuthenticateResult.NoResult();
        var identity = new ClaimsIdentity(
            [new(ClaimTypes.NameIdentifier, device.PersonId.ToString()), new(NameClaim, device.Name), new(IdClaim, device.Id.ToString())], Name);
        if (!byBearer)
            identity.AddClaim(new(CookieClaim, "1"));
        return AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), Name));
    }
}
