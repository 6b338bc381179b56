using Foundress.Book.Demo;
using Foundress.Knowledge;

namespace Foundress.Server.Tests.Fuzz;

public class HeaderTests : IAsyncLifetime
{
    private readonly Site _site = new();

    public async ValueTask InitializeAsync()
    {
        await _site.InitializeAsync();
        await _site.Server.Store.AppendAsync("demo", DemoBook.Entries(KnowledgeBase.Load(), DemoBook.DefaultSeed, new DateOnly(2026, 9, 1)));
    }

    public async ValueTask DisposeAsync()
    {
        await _site.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Theory]
    [InlineData("GET", "", 200, "text/html", "'self'")]
    [InlineData("GET", "colony/0197", 200, "text/html", "'self'")]
    [InlineData("GET", "index.html", 200, "text/html", "'self'")]
    [InlineData("GET", "service-worker.js", 200, "text/javascript", "'self'")]
    [InlineData("GET", "css/foundress.css", 200, "text/css", "'self'")]
    [InlineData("GET", "_framework/blazor.webassembly.js", 200, "text/javascript", "'self'")]
    [InlineData("GET", "manifest.webmanifest", 200, "application/manifest+json", "'self'")]
    [InlineData("GET", "missing.js", 404, "application/problem+json", "'self'")]
    [InlineData("POST", "index.html", 405, "application/problem+json", "'self'")]
    [InlineData("GET", "health/live", 200, "application/json", "'self'")]
    [InlineData("GET", "health/ready", 200, "application/json", "'self'")]
    [InlineData("GET", "api/v1/about", 200, "application/json", "'self'")]
    [InlineData("GET", "api/v1/operations/demo/entries", 200, "application/json", "'self'")]
    [InlineData("GET", "api/v1/operations/demo/report", 200, "text/html", "'none'")]
    [InlineData("GET", "api/v1/operations/demo/report?format=text", 200, "text/plain", "'self'")]
    [InlineData("GET", "api/v1/operations/demo/register", 200, "text/html", "'none'")]
    [InlineData("GET", "api/v1/operations/demo/register?format=csv", 200, "text/csv", "'self'")]
    [InlineData("GET", "api/v1/operations/demo/apiaries.geojson", 200, "application/geo+json", "'self'")]
    [InlineData("GET", "calendar.ics", 200, "text/calendar", "'self'")]
    [InlineData("GET", "api/v1/operations/demo/report?format=pdf", 400, "application/problem+json", "'self'")]
    [InlineData("GET", "api/v1/nothing", 404, "application/problem+json", "'self'")]
    [InlineData("POST", "api/v1/operations/home/entries", 415, "application/problem+json", "'self'")]
    [InlineData("DELETE", "api/v1/operations/home", 403, "application/problem+json", "'self'")]
    public async Task Answer_OfEveryKind_IsGuarded(string method, string path, int status, string type, string source)
    {
        // Whatever form the caller says it likes: a calendar program, a browser's address bar, nothing at all.
        foreach (var accept in new[] { null, "text/html", "text/calendar", "application/json" })
        {
            using var request = new HttpRequestMessage(new HttpMethod(method), path);
            if (accept is not null)
                request.Headers.Accept.ParseAdd(accept);
            using var answer = await _site.Caller.SendAsync(request);
            Assert.Equal((status, type), ((int)answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
            var headers = answer.Headers.Concat(answer.Content.Headers).ToDictionary(header => header.Key, header => string.Join(", ", header.Value));
            Guards.Check(headers);
            Assert.StartsWith($"default-src {source};", headers["Content-Security-Policy"], StringComparison.Ordinal);
            if (path.StartsWith("api/", StringComparison.Ordinal))
                Assert.Equal("no-store", headers["Cache-Control"]);
            if (type == "text/html" || type.EndsWith("json", StringComparison.Ordinal) && status == 200 && type != "application/manifest+json")
                Assert.NotEmpty(await answer.Content.ReadAsStringAsync());
        }
    }
}
