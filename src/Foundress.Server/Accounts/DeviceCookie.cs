using Foundress.Accounts;
using Foundress.Server.Security;

namespace Foundress.Server.Accounts;

/// <summary>The cookie that holds a device's secret. Scripts cannot read it, and it is sent to this server's own pages only.</summary>
internal static class DeviceCookie
{
    /// <summary>Its name. The prefix keeps other hosts of the domain from setting it, and needs HTTPS.</summary>
    public static string NameFor(Reach reach) => (reach.Name is null ? "" : "__Host-") + "foundress-device";

    public static string? Read(HttpContext http) => http.Request.Cookies[NameFor(http.RequestServices.GetRequiredService<Reach>())];

    public static void Write(HttpContext http, string secret)
    {
        var reach = http.RequestServices.GetRequiredService<Reach>();
        http.Response.Cookies.Append(NameFor(reach), secret, Form(http, reach, Devices.Idle));
    }

    public static void Remove(HttpContext http)
    {
        var reach = http.RequestServices.GetRequiredService<Reach>();
        http.Response.Cookies.Delete(NameFor(reach), Form(http, reach, null));
    }

    private static CookieOptions Form(HttpContext http, Reach reach, TimeSpan? lasts) => new()
    {
        HttpOnly = true,
        SameSite = SameSiteMode.Strict,
        Secure = reach.Name is not null || http.Request.IsHttps,
        IsEssential = true,
        Path = "/",
        MaxAge = lasts,
    };
}
