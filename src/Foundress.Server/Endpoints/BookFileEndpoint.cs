using Foundress.Book.Exchanging;
using Foundress.Storage;

namespace Foundress.Server.Endpoints;

/// <summary>A whole book as one file, the same that <c>foundress export</c> writes, and the JSON Schema of its lines.</summary>
internal static class BookFileEndpoint
{
    private const string Schema = "entry.schema.json";

    public static void MapBookFile(this IEndpointRouteBuilder api)
    {
        api.MapGet("/operations/{operation}/book", async (string operation, HttpContext http, BookStore store, CancellationToken cancellation) =>
        {
            var ledger = await StoredLedger.ReadAsync(store, operation, cancellation);
            http.Response.ContentType = BookFile.MediaType;
            http.Response.Headers.ContentDisposition = "attachment; filename=\"book.jsonl\"";
            await BookFile.WriteAsync(http.Response.Body, operation, ledger.Entries, cancellation);
        });
        api.MapGet("/schemas/entry.json", () => TypedResults.Stream(typeof(BookFileEndpoint).Assembly.GetManifestResourceStream(Schema)!, "application/schema+json"));
    }
}
