using Microsoft.AspNetCore.Mvc;

namespace Foundress.Server.Problems;

/// <summary>Answers with a problem where headers already set must stay, which an exception would wipe out.</summary>
internal static class ProblemAnswer
{
    // In this form whatever form the caller likes best, as with errors.
    public static Task WriteAsync(HttpContext http, int status, string detail) =>
        TypedResults.Problem(new ProblemDetails { Status = status, Title = ProblemTexts.Title, Detail = detail }).ExecuteAsync(http);

    /// <summary>Answers with no more than the status and its name, where the framework refused a request without a word.</summary>
    public static Task WriteAsync(HttpContext http, int status) => TypedResults.Problem(statusCode: status, title: status switch
    {
        StatusCodes.Status400BadRequest => ProblemTexts.BadRequest,
        StatusCodes.Status404NotFound => ProblemTexts.NotFound,
        StatusCodes.Status405MethodNotAllowed => ProblemTexts.MethodNotAllowed,
        // Meant for programs, in the words of HTTP.
        _ => null,
    }).ExecuteAsync(http);
}
