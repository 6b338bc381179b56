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
            return await JsonSerializer.DeserializeAsync(http.Request.Body, type, http.RequestAborted)
                ?? throw new RequestProblemException(StatusCodes.Status400BadRequest, "The body must be a JSON object.");
        }
        catch (Exception error) when (error is InvalidDataException or InvalidOperationException)
        {
            throw new RequestProblemException(StatusCodes.Status400BadRequest, "The body is not packed as Content-Encoding says. Send it again.");
        }
        catch (JsonException error)
        {
            throw new RequestProblemException(
                StatusCodes.Status400BadRequest, error.Path is null or "$" ? $"The body is not what is expected here: {error.Message}" : $"{error.Path.TrimStart('$', '.')}: is not a value that can be taken here.");
        }
    }

    public static IResult Reply<T>(T value, JsonTypeInfo<T> type, int status = StatusCodes.Status200OK) => TypedResults.Json(value, type, statusCode: status);
}
