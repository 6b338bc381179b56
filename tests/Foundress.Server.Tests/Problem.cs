using System.Net;
using System.Net.Http.Json;
using System.Text.Json;

namespace Foundress.Server.Tests;

internal static class Problem
{
    /// <summary>Checks that an answer is a problem in the form of RFC 9457 with a status and some words of its detail.</summary>
    public static async Task IsAsync(HttpStatusCode status, string words, HttpResponseMessage answer)
    {
        Assert.Equal(status, answer.StatusCode);
        Assert.Equal(status == HttpStatusCode.Unauthorized, answer.Headers.WwwAuthenticate.Count > 0);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var problem = await answer.Content.ReadFromJsonAsync<JsonElement>();
        Assert.Contains(words, problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }
}
