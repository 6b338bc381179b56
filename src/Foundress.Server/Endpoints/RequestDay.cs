using System.Globalization;
using Foundress.Book.Wording;
using Foundress.Server.Problems;

namespace Foundress.Server.Endpoints;

/// <summary>A day in a request's address.</summary>
internal static class RequestDay
{
    /// <summary>Writes it the same way.</summary>
    public static string Write(DateOnly? day) => day is { } known ? Say.IsoDay(known) : string.Empty;

    /// <summary>Reads it; null when it is not given.</summary>
    /// <exception cref="RequestProblemException">It is no day.</exception>
    public static DateOnly? Read(HttpContext http, string name)
    {
        var text = http.Request.Query[name].ToString();
        if (text.Length == 0)
            return null;
        return DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && day.Year is > 1900 and < 9000
            ? day
            : throw new RequestProblemException(StatusCodes.Status400BadRequest, EndpointTexts.FormatNotADay(name, text));
    }
}
