namespace Foundress.Server.Tests.Fuzz;

/// <summary>The headers every answer carries, whatever it answers.</summary>
internal static class Guards
{
    public static void Check(IReadOnlyDictionary<string, string> headers)
    {
        var policy = headers["Content-Security-Policy"];
        Assert.DoesNotContain("\n", policy, StringComparison.Ordinal);
        var parts = policy.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .ToDictionary(part => part.Split(' ')[0], part => part[(part.IndexOf(' ', StringComparison.Ordinal) + 1)..]);
        Assert.Equal("'none'", parts["frame-ancestors"]);
        Assert.Contains(parts["base-uri"], new[] { "'self'", "'none'" });
        if (parts["default-src"] == "'none'")
        {
            // A printable page: nothing runs, nothing is fetched, nothing is sent.
            Assert.DoesNotContain("script-src", parts.Keys);
            Assert.DoesNotContain("connect-src", parts.Keys);
        }
        else
        {
            Assert.Equal("'self'", parts["default-src"]);
            Assert.Equal("'self' 'wasm-unsafe-eval'", parts["script-src"]);
            Assert.Equal("'self'", parts["style-src"]);
            Assert.Equal("'self'", parts["connect-src"]);
            Assert.Equal("'none'", parts["object-src"]);
            Assert.Equal("'self'", parts["form-action"]);
        }

        Assert.Equal("nosniff", headers["X-Content-Type-Options"]);
        Assert.Equal("DENY", headers["X-Frame-Options"]);
        Assert.Equal("no-referrer", headers["Referrer-Policy"]);
        Assert.Equal("same-origin", headers["Cross-Origin-Opener-Policy"]);
        Assert.Equal("same-origin", headers["Cross-Origin-Resource-Policy"]);
        Assert.Contains("microphone=()", headers["Permissions-Policy"], StringComparison.Ordinal);
        Assert.Contains(headers["Cache-Control"].Split(',')[0], new[] { "no-store", "no-cache" });
        Assert.DoesNotContain("Server", headers.Keys);
        Assert.DoesNotContain("X-Powered-By", headers.Keys);
        Assert.DoesNotContain("Access-Control-Allow-Origin", headers.Keys);
        Assert.DoesNotContain("Set-Cookie", headers.Keys);
    }
}
