using Microsoft.Net.Http.Headers;

namespace Foundress.Server.Security;

/// <summary>Headers that keep other sites and injected content out, and keep old copies from being shown.</summary>
internal sealed class SecurityHeaders(RequestDelegate next)
{
    // 'wasm-unsafe-eval' lets WebAssembly be compiled and nothing else be evaluated.
    internal const string Policy =
        "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; "
        + "object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    public Task InvokeAsync(HttpContext http)
    {
        http.Response.OnStarting(static state =>
        {
            var context = (HttpContext)state;
            var headers = context.Response.Headers;
            // The printable report brings a stricter one of its own.
            if (headers.ContentSecurityPolicy.Count == 0)
                headers.ContentSecurityPolicy = Policy;
            headers.XContentTypeOptions = "nosniff";
            headers.XFrameOptions = "DENY";
            headers["Referrer-Policy"] = "no-referrer";
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
            headers["Cross-Origin-Resource-Policy"] = "same-origin";
            headers["Permissions-Policy"] = "camera=(self), geolocation=(self), microphone=(), payment=(), usb=()";
            // A browser that came by HTTPS once does not try without it again.
            if (context.Request.IsHttps && !OwnNamesOnly.IsThisComputer(context.Request.Host.Host))
                headers.StrictTransportSecurity = "max-age=31536000";
            if (context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal))
                headers.CacheControl = "no-store";
            else if (!headers.ContainsKey(HeaderNames.CacheControl) || IsServiceWorker(context.Request.Path))
                // Kept, but asked about before every use: an update must be seen at once.
                headers.CacheControl = "no-cache";
            return Task.CompletedTask;
        }, http);
        return next(http);
    }

    private static bool IsServiceWorker(PathString path) =>
        path.Value?.StartsWith("/service-worker", StringComparison.Ordinal) == true;
}
