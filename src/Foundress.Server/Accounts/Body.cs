using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Foundress.Server.Problems;
using Foundress.Server.Security;
using Microsoft.AspNetCore.Http.Features;

namespace Foundress.Server.Accounts;

/// <summary>Reads and writes the JSON of account requests.</summary>
internal static class Body
{
    private const int GreatestForm = 64 * 1024;

    /// <summary>Reads the form that was sent.</summary>
    /// <exception cref="RequestProblemException">It is no such form; the message names the field.</exception>
    public static async Task<T> ReadAsync<T>(HttpContext http, JsonTypeInfo<T> type)
    {
        // A form is short; whoever sends more holds the server up.
        if (http.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
            size.MaxRequestBodySize = GreatestForm;
        if (!http.Request.HasJsonContentType())
            throw new RequestProblemException(StatusCodes.Status415UnsupportedMediaType, AccountTexts.SendObject);
        using var document = await ParseAsync(http);
        await StillAllowed.CheckAsync(http);
        var sent = document.RootElement;
        if (sent.ValueKind != JsonValueKind.Object)
            throw Bad(AccountTexts.NotAnObject);
        if (type.Properties.FirstOrDefault(field => field.IsRequired && !sent.TryGetProperty(field.Name, out _)) is { } missing)
            throw Bad(AccountTexts.FormatMissing(missing.Name));
        try
        {
            return sent.Deserialize(type) ?? throw Bad(AccountTexts.NotAnObject);
        }
        catch (JsonException error)
        {
            // What it says itself names the inside of the server.
            throw error.Path is null or "$" ? Bad(AccountTexts.NotAnObject) : Bad(AccountTexts.FormatNoSuchValue(error.Path.TrimStart('$', '.')));
        }
    }

    private static async Task<JsonDocument> ParseAsync(HttpContext http)
    {
        try
        {
            return await JsonDocument.ParseAsync(http.Request.Body, default, http.RequestAborted);
        }
        catch (Exception error) when (error is InvalidDataException or InvalidOperationException)
        {
            throw Bad(AccountTexts.Packing);
        }
        catch (JsonException error)
        {
            throw Bad(AccountTexts.FormatNotWholeJson((error.LineNumber ?? 0) + 1));
        }
    }

    private static RequestProblemException Bad(string detail) => new(StatusCodes.Status400BadRequest, detail);

    public static IResult Reply<T>(T value, JsonTypeInfo<T> type, int status = StatusCodes.Status200OK) => TypedResults.Json(value, type, statusCode: status);
}
