using Microsoft.AspNetCore.Mvc;

namespace Foundress.Server.Problems;

/// <summary>Answers with a problem where headers already set must stay, which an exception would wipe out.</summary>
internal static class ProblemAnswer
{
    public static async Task WriteAsync(HttpContext http, int status, string detail)
    {
        http.Response.StatusCode = status;
        await http.RequestServices.GetRequiredService<IProblemDetailsService>().WriteAsync(new ProblemDetailsContext
        {
            HttpContext = http,
            ProblemDetails = new ProblemDetails { Status = status, Title = "The request cannot be answered", Detail = detail },
        });
    }
}
