using Foundress.Accounts;

namespace Foundress.Server.Accounts;

/// <summary>Who asks.</summary>
/// <param name="Standing">Who they are and what they may do.</param>
/// <param name="HasSignedIn">Whether they signed in, rather than only being known by their device.</param>
/// <param name="Device">Name of their enrolled device in entries; null when they asked from none.</param>
/// <param name="DeviceId">Its id in the list of devices.</param>
/// <param name="ByCookie">Whether a browser vouched for them by a cookie, which it also does for pages of others.</param>
internal sealed record Caller(Standing Standing, bool HasSignedIn, string? Device, Guid? DeviceId, bool ByCookie)
{
    public Guid Person => Standing.Person;

    public static Caller? Of(HttpContext http) => http.Features.Get<Caller>();

    /// <summary>Who asks, where the access rules let only known people through.</summary>
    public static Caller Known(HttpContext http) =>
        Of(http) ?? throw new InvalidOperationException("The access rules let somebody unknown through.");
}
