using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Foundress.Server.Problems;

namespace Foundress.Server.Accounts;

/// <summary>Reads and writes the JSON of account requests.</summary>
internal static class Body
{
    /// <summary>Reads the form that was sent.</summary>
    /// <exception cref="RequestProblemException">It is no such form; the message names the field.</exception>
    public static async Task<T> ReadAsync<T>(HttpContext http, JsonTypeInfo<T> type)
    {
        if (!http.Request.HasJsonContentType())
            throw new RequestProblemException(StatusCodes.Status415UnsupportedMediaType, "Send a JSON object with the header Content-Type: application/json.");
        try
        {
            using var document = await JsonDocument.ParseAsync(http.Request.Body, default, http.RequestAborted);
            var sent = document.RootElement;
            if (sent.ValueKind != JsonValueKind.Object)
                throw Bad("The body is not what is expected here: a JSON object.");
            if (type.Properties.FirstOrDefault(field => field.IsRequired && !sent.TryGetProperty(field.Name, out _)) is { } missing)
                throw Bad($"{missing.Name}: is missing.");
            return sent.Deserialize(type) ?? throw Bad("The body is not what is expected here: a JSON object.");
        }
        catch (Exception error) when (error is InvalidDataException or InvalidOperationException)
        {
            throw Bad("The body is not packed as Content-Encoding says, or holds half a character. Send it again.");
        }
        catch (JsonException error)
        {
            // What it says itself names the inside of the server.
            throw Bad(error.Path is null or "$"
                ? $"The body is not what is expected here: it is no whole JSON (line {(error.LineNumber ?? 0) + 1})."
                : $"{error.Path.TrimStart('$', '.')}: is not a value that can be taken here.");
        }
    }

    private static RequestProblemException Bad(string detail) => new(StatusCodes.Status400BadRequest, detail);

    public static IResult Reply<T>(T value, JsonTypeInfo<T> type, int status = StatusCodes.Status200OK) => TypedResults.Json(value, type, statusCode: status);
}
