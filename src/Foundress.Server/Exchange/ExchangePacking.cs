using System.IO.Compression;
using System.Net.Mime;
using Foundress.Server.Problems;
using Microsoft.AspNetCore.ResponseCompression;

namespace Foundress.Server.Exchange;

/// <summary>
/// Packed bodies, both ways: gzip and Brotli. Files of the web app are packed when they are published and not here.
/// </summary>
/// <remarks>
/// Answers are packed where they hold what keepers recorded and nothing else. One that held both a secret of the session and
/// words of a stranger would tell the secret by its length, so addresses of accounts, links and invitations are left alone.
/// </remarks>
internal static class ExchangePacking
{
    private static readonly string[] Packed = ["entries", "book", "register", "report", "apiaries.geojson", "due", "apiaries"];

    public static void AddExchangePacking(this IServiceCollection services)
    {
        services.AddRequestDecompression();
        services.AddResponseCompression(options =>
        {
            options.EnableForHttps = true;
            options.MimeTypes = [MediaTypeNames.Application.Json, "application/geo+json", "application/x-ndjson"];
        });
        // The fastest levels, which are the default, leave entries more than twice as long.
        services.Configure<GzipCompressionProviderOptions>(options => options.Level = CompressionLevel.Optimal);
        services.Configure<BrotliCompressionProviderOptions>(options => options.Level = CompressionLevel.Optimal);
    }

    /// <summary>Packs answers. Stands outside of whatever writes them.</summary>
    public static void UsePackedAnswers(this IApplicationBuilder app) =>
        app.UseWhen(http => IsPacked(http.Request.Path), records => records.UseResponseCompression());

    /// <summary>Unpacks bodies that are sent. The limit of a body counts once more for what comes out of it.</summary>
    public static void UsePackedRequests(this IApplicationBuilder app)
    {
        app.UseRequestDecompression();
        // What the middleware can unpack it does, and takes the header away.
        app.Use((http, next) => http.Request.Headers.ContentEncoding.Count == 0
            ? next(http)
            : throw new RequestProblemException(
                StatusCodes.Status415UnsupportedMediaType, ExchangeTexts.FormatPacking(http.Request.Headers.ContentEncoding.ToString())));
    }

    // /api/v1/operations/{operation}/{what}, and what lies under it
    private static bool IsPacked(PathString path) =>
        path.Value?.Split('/') is ["", "api", "v1", "operations", _, var what, ..] && Packed.Contains(what);
}
