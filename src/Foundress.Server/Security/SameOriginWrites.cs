using Foundress.Server.Problems;

namespace Foundress.Server.Security;

/// <summary>
/// Refuses writes that a page of another site asks for. Browsers name the asking page; programs that are not browsers name
/// none, and no page can make them act.
/// </summary>
internal sealed class SameOriginWrites(RequestDelegate next)
{
    /// <summary>Whether a browser says that a page of this very server asks. Every browser in use says so by one header or the other.</summary>
    public static bool ComesFromOwnPage(HttpRequest request) =>
        request.Headers["Sec-Fetch-Site"] == "same-origin" || request.Headers.Origin == $"{request.Scheme}://{request.Host.Value}";

    public Task InvokeAsync(HttpContext http)
    {
        var request = http.Request;
        if (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method))
            return next(http);
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        var origin = request.Headers.Origin.ToString();
        var isOwn = site is "" or "same-origin" or "none" && (origin.Length == 0 || origin == $"{request.Scheme}://{request.Host.Value}");
        return isOwn
            ? next(http)
            : throw new RequestProblemException(
                StatusCodes.Status403Forbidden, AccessTexts.OtherSite);
    }
}
