using System.Globalization;
using Foundress.Server.Accounts;
using Foundress.Server.Exchange;
using Foundress.Server.Problems;
using Foundress.Server.Security;
using Foundress.Storage;

namespace Foundress.Server.Endpoints;

/// <summary>The exchange of entries: "take what I lack" and "send what you lack".</summary>
internal static class EntryEndpoints
{
    private const int DefaultPage = 500;

    public static void MapEntries(this IEndpointRouteBuilder api)
    {
        api.MapGet("/operations/{operation}/entries", TakeAsync);
        api.MapPost("/operations/{operation}/entries", SendAsync);
    }

    private static async Task TakeAsync(string operation, HttpContext http, BookStore store, CancellationToken cancellation)
    {
        CheckOperation(operation);
        var after = Number(http, "after", 0, 0, long.MaxValue);
        var limit = (int)Number(http, "limit", DefaultPage, 1, BookStore.GreatestPage);
        var page = await store.ReadAsync(operation, after, limit, cancellation);
        await EntryPages.WriteAsync(http, store.Incarnation, null, page.Entries, page.Next, page.More, cancellation);
    }

    private static async Task<IResult> SendAsync(string operation, HttpContext http, BookStore store, CancellationToken cancellation)
    {
        CheckOperation(operation);
        if (!http.Request.HasJsonContentType())
        {
            throw new RequestProblemException(
                StatusCodes.Status415UnsupportedMediaType, EndpointTexts.SendArray);
        }

        var body = new MemoryStream();
        try
        {
            await http.Request.Body.CopyToAsync(body, cancellation);
        }
        catch (Exception error) when (error is InvalidDataException or InvalidOperationException)
        {
            throw new RequestProblemException(
                StatusCodes.Status400BadRequest, EndpointTexts.FormatNotWhole(error.Message));
        }

        await StillAllowed.CheckAsync(http);
        var exchange = ExchangeReader.Read(operation, body.GetBuffer().AsMemory(0, (int)body.Length), await store.NowAsync(cancellation));
        if (http.RequestServices.GetService<EntryGate>() is { } gate)
            exchange = await gate.SiftAsync(http, operation, exchange);
        // A caller that hangs up now may not know, and sends again: that does no harm.
        var result = await store.AppendAsync(operation, exchange.Entries, cancellation);
        return TypedResults.Ok(new ExchangeAnswer(result.Accepted, result.Known, exchange.Refused, store.Incarnation));
    }

    internal static void CheckOperation(string operation)
    {
        if (string.IsNullOrWhiteSpace(operation) || operation.Length > ExchangeReader.GreatestName)
        {
            throw new RequestProblemException(
                StatusCodes.Status400BadRequest, EndpointTexts.FormatOperationLength(ExchangeReader.GreatestName, operation.Length));
        }
    }

    internal static long Number(HttpContext http, string name, long whenAbsent, long least, long greatest)
    {
        var text = http.Request.Query[name];
        if (text.Count == 0)
            return whenAbsent;
        return long.TryParse(text.ToString(), NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= greatest
            ? number
            : throw new RequestProblemException(
                StatusCodes.Status400BadRequest,
                EndpointTexts.FormatWholeNumber(name, text.ToString(), least, greatest));
    }
}
