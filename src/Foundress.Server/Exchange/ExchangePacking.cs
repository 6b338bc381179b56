using System.IO.Compression;
using System.Net.Mime;
using Foundress.Server.Problems;
using Microsoft.AspNetCore.ResponseCompression;

namespace Foundress.Server.Exchange;

/// <summary>
/// Packed bodies, both ways: gzip and Brotli. Files of the web app are packed when they are published and not here.
/// </summary>
/// <remarks>
/// Answers are packed under <c>/api/v1/operations</c> alone: what keepers recorded, without a secret of the session in it. An
/// answer that held both a secret and words of a stranger would tell the secret by its length.
/// </remarks>
internal static class ExchangePacking
{
    private const string Packed = "/api/v1/operations";

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
        app.UseWhen(http => http.Request.Path.StartsWithSegments(Packed, StringComparison.Ordinal), api => api.UseResponseCompression());

    /// <summary>Unpacks bodies that are sent. The limit of a body counts once more for what comes out of it.</summary>
    public static void UsePackedRequests(this IApplicationBuilder app)
    {
        app.UseRequestDecompression();
        // What the middleware can unpack it does, and takes the header away.
        app.Use((http, next) => http.Request.Headers.ContentEncoding.Count == 0
            ? next(http)
            : throw new RequestProblemException(
                StatusCodes.Status415UnsupportedMediaType, $"Content-Encoding: '{http.Request.Headers.ContentEncoding}' is not one of gzip, br, deflate. Send the entries packed with one of them, or unpacked."));
    }
}
