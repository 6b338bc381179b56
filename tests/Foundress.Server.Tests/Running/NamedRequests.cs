using System.Net;
using System.Text;

namespace Foundress.Server.Tests.Running;

/// <summary>Requests of every kind with a name in every place a name can stand in.</summary>
internal static class NamedRequests
{
    /// <summary>Stands in no word of the program's own.</summary>
    public const string Name = "Zebedee";

    /// <summary>Makes them.</summary>
    /// <returns>How many were answered.</returns>
    public static async Task<int> MakeAsync(Uri address)
    {
        using var caller = new HttpClient { BaseAddress = address };
        caller.DefaultRequestHeaders.UserAgent.ParseAdd($"{Name}/1.0");
        caller.DefaultRequestHeaders.Add("tracestate", $"{Name.ToLowerInvariant()}=1");
        caller.DefaultRequestHeaders.Add("traceparent", "00-0af7651916cd43dd8448eb211c80319c-b7ad6b7169203331-01");
        caller.DefaultRequestHeaders.Add("baggage", $"who={Name}");
        var good = Site.Entry(1, Name, payload: $$"""{"note":"{{Name}} found the queen"}""") with { Author = Name, Device = Name + "'s phone" };
        HttpRequestMessage Post(string path, HttpContent? content) => new(HttpMethod.Post, path) { Content = content };
        HttpRequestMessage Get(string path, string? host = null)
        {
            var request = new HttpRequestMessage(HttpMethod.Get, path);
            request.Headers.Host = host;
            return request;
        }

        HttpRequestMessage[] requests =
        [
            Post(Site.Entries(Name), Site.Json(good)),
            Post(Site.Entries(Name), Site.Json(good, Site.Entry(2, "other " + Name))),
            Post(Site.Entries(Name), Site.Json($$"""[{"id":"{{Name}}","author":"{{Name}}"}, "{{Name}}"]""")),
            Post(Site.Entries(Name), Site.Json($"[\"{Name}")),
            Post(Site.Entries(Name), new StringContent(Name, Encoding.UTF8, "text/plain")),
            Get(Site.Entries(Name)),
            Get($"{Site.Entries(Name)}?after={Name}"),
            Get($"api/v1/operations/{Name}/report?from={Name}"),
            Get($"api/v1/operations/{Name}/register?apiary={Name}&format={Name}"),
            Get($"api/v1/operations/{Name}/calendar.ics"),
            Get($"api/v1/{Name}"),
            Get($"{Name}/{Name}"),
            Get($"{Name}.js"),
            Get("api/v1/about", $"{Name}.example"),
            // A server that was told of no proxy may refuse whatever says it came through one.
            new(HttpMethod.Get, "api/v1/about") { Headers = { { "X-Forwarded-For", Name } } },
            new(HttpMethod.Delete, $"api/v1/operations/{Name}"),
            new(new HttpMethod(Name.ToUpperInvariant()), $"api/v1/{Name}"),
        ];
        var liked = new[] { "*/*", "text/html", "text/calendar" };
        foreach (var request in requests)
        {
            // A caller that takes no JSON must not draw out more.
            request.Headers.Accept.ParseAdd(liked[Array.IndexOf(requests, request) % liked.Length]);
            using (request)
            using (var answer = await caller.SendAsync(request))
                Assert.NotEqual(HttpStatusCode.InternalServerError, answer.StatusCode);
        }

        return requests.Length;
    }
}
