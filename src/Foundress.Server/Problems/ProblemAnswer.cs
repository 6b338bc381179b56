using Microsoft.AspNetCore.Mvc;

namespace Foundress.Server.Problems;

/// <summary>Answers with a problem where headers already set must stay, which an exception would wipe out.</summary>
internal static class ProblemAnswer
{
    // In this form whatever form the caller likes best, as with errors.
    public static Task WriteAsync(HttpContext http, int status, string detail) =>
        TypedResults.Problem(new ProblemDetails { Status = status, Title = "The request cannot be answered", Detail = detail }).ExecuteAsync(http);
}
