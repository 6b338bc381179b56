using System.Text;
using CsCheck;

namespace Foundress.Server.Tests.Fuzz;

/// <summary>Makes up requests that are HTTP and otherwise anything.</summary>
internal static class RequestGen
{
    private static readonly string[] Methods = ["GET", "GET", "GET", "HEAD", "POST", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "QUERY", "BREW"];

    private static readonly string[] Names =
        ["after", "limit", "from", "to", "format", "apiary", "agent", "substances", "operation", "kind", "", "%00", "a[]", "__proto__"];

    private static readonly string[] Values =
    [
        "", "0", "1", "-1", "500", "2001", "99999999999999999999", "1e9", "0x10", "NaN", "null", "true", "2026-07-01", "2026-02-30", "0001-01-01", "9999-12-31",
        "8999-12-31", "html", "json", "csv", "text", "only", "home", "fuzz", "demo", "%00", "%0d%0aSet-Cookie:%20a=b", "%ff%fe", "%c3%28", "%e2%80%ae", "%f0%9f%90%9d",
        "..%2f..%2fetc%2fpasswd", "%3Cscript%3Ealert(1)%3C/script%3E", "'%20or%201=1--", "%7B%7B7*7%7D%7D", new('x', 300), new('9', 3_000),
    ];

    private static readonly string[] Segments =
    [
        "home", "fuzz", "demo", "api", "v1", "v2", "operations", "entries", "about", "backups", "report", "health", "live", "_framework", "index.html", "service-worker.js",
        "..", ".", "%2e%2e", "..%2f", "%5c", "%00", "%ff", "%c3%28", "~", "a%20b", "*", "{operation}", "%25", ";x=1", "@", new('y', 250), "%e2%98%83", "css", "a.js",
    ];

    private static readonly string[] Headers =
    [
        "Accept: text/html", "Accept: image/*;q=0.1", "Accept: application/json", "Accept: ///", "Accept: ", "Accept-Encoding: br, gzip", "Accept-Encoding: ;q=x, *;q=0",
        "Content-Encoding: gzip", "Content-Encoding: nonsense", "If-None-Match: *", "If-None-Match: \"", "If-Modified-Since: soon", "If-Match: W/\"x\"", "Range: bytes=5-1", "Range: bytes=0-9,20-",
        "Origin: null", "Origin: https://bees.example", "Sec-Fetch-Site: same-origin", "Sec-Fetch-Site: cross-site", "Cookie: a=b; c", "Authorization: Bearer x",
        "Authorization: Basic !!", "X-Forwarded-For: ::, x", "X-Forwarded-Host: bees.example", "X-Forwarded-Proto: https", "X-HTTP-Method-Override: DELETE", "Expect: 100-continue",
        "Upgrade: websocket", "traceparent: 00-zz", "Accept-Language: \u00e9\u00e8", "Referer: \u0001x", "X-Long: " + new string('z', 6_000), "TE: trailers", "Prefer: \"",
    ];

    private static readonly string[] Types =
        ["application/json", "application/json; charset=utf-7", "application/json; charset=\"", "text/json", "application/problem+json", "text/plain", "multipart/form-data", "application/x-www-form-urlencoded", "x", ""];

    private static readonly string[] Jsons =
    [
        "", "[]", "{}", "null", "1", "\"", "[", "[{}]", "[[],{},1,null,true,\"x\"]", "[1e999999]", "[-0.0e-999999]", "{\"a\":", "[\"\\ud800\"]", "\ufeff[]", "[]]", "// x\n[]", "[,]", "['a']",
        """[{"id":"00000000-0000-7000-8000-000000000001","operation":"fuzz","author":"a","device":"d","clock":"000000000000-0000","kind":"jar","schema":99999999999999999999,"payload":{}}]""",
        """[{"id":"00000000-0000-7000-8000-000000000001","operation":"fuzz","author":"a","device":"d","clock":"ffffffffffff-ffff","kind":"jar","schema":1,"payload":{"a":1e999,"b":"\udc00"}}]""",
        """[{"id":7,"id":"x","operation":null,"payload":[]}]""",
        new string('[', 5_000), new string('[', 60) + new string(']', 60), "[" + new string(' ', 50_000) + "]", "{\"a\":{\"a\":{\"a\":{\"a\":{\"a\":{\"a\":{\"a\":{\"a\":{}}}}}}}}}",
    ];

    private static readonly Gen<string> Segment = Gen.OneOf(Of(Segments), Of(Segments), Gen.String[Gen.Char["abcXYZ019-_.~!$&'()+,;=:@%2F"], 0, 12]);

    private static readonly Gen<string> Query = Gen.Select(Of(Names), Of(Values)).Array[0, 4]
        .Select(pairs => pairs.Length == 0 ? "" : "?" + string.Join('&', pairs.Select(pair => $"{pair.Item1}={pair.Item2}")));

    private static readonly Gen<byte[]> Body = Gen.OneOf(
        Of(Jsons).Select(Encoding.UTF8.GetBytes), Of(Jsons).Select(Encoding.UTF8.GetBytes),
        Gen.Byte.Array[0, 200], Gen.String[0, 200].Select(Encoding.UTF8.GetBytes));

    /// <summary>Requests to the addresses a server has, and to others.</summary>
    /// <param name="routes">The server's own, method and address, with placeholders in braces.</param>
    public static Gen<byte[]> Requests(string[] routes)
    {
        var own = Gen.Select(Of(routes), Segment.Array[6]).Select(Filled);
        var ownOtherwise = Gen.Select(Of(Methods), own).Select((method, target) => method + target[target.IndexOf(' ', StringComparison.Ordinal)..]);
        var other = Gen.Select(Of(Methods), Segment.Array[0, 6]).Select((method, parts) => $"{method} /{string.Join('/', parts)}");
        return Gen.Select(Gen.OneOf(own, own, own, own, ownOtherwise, other), Query, Of(Headers).Array[0, 3], Gen.OneOf(Gen.Const(Types[0]), Of(Types)), Body, Gen.Int[0, 19])
            .Select((target, query, headers, type, body, odd) => Write(target + query, headers, type, body, odd));
    }

    /// <summary>Bytes that are hardly HTTP.</summary>
    public static Gen<byte[]> Malformed { get; } = Gen.OneOf(
        Gen.Byte.Array[0, 300],
        Gen.String[Gen.Char["GETPOSThttp/1. \r\n\t:0%?#"], 0, 200].Select(Encoding.ASCII.GetBytes),
        Gen.Select(Gen.Int[0, 90], Gen.Byte.Array[1, 6]).Select((at, put) =>
        {
            var whole = Write("POST /api/v1/operations/home/entries", ["Accept: */*"], "application/json", "[]"u8.ToArray(), 5);
            return (byte[])[.. whole[..Math.Min(at, whole.Length)], .. put, .. whole[Math.Min(at + put.Length, whole.Length)..]];
        }));

    private static Gen<string> Of(string[] choices) => Gen.Int[0, choices.Length - 1].Select(n => choices[n]);

    private static string Filled(string route, string[] fill)
    {
        var next = 0;
        return string.Join('/', route.Split('/').Select(part => part.Contains('{', StringComparison.Ordinal) ? fill[next++ % fill.Length] : part));
    }

    private static byte[] Write(string target, string[] headers, string type, byte[] body, int odd)
    {
        var head = new StringBuilder();
        head.Append($"{target} HTTP/1.1\r\nHost: {(odd == 0 ? "bees.example" : "localhost")}\r\n");
        foreach (var header in headers.DistinctBy(header => header.Split(':')[0]))
            head.Append(header).Append("\r\n");
        if (type.Length > 0 && !headers.Any(header => header.StartsWith("Content-Type", StringComparison.Ordinal)))
            head.Append($"Content-Type: {type}\r\n");
        var framed = body;
        if (odd == 1)
        {
            head.Append("Transfer-Encoding: chunked\r\n");
            framed = body.Length == 0 ? "0\r\n\r\n"u8.ToArray() : [.. Encoding.ASCII.GetBytes($"{body.Length:x}\r\n"), .. body, .. "\r\n0\r\n\r\n"u8];
        }
        else
        {
            head.Append($"Content-Length: {body.Length}\r\n");
        }

        return [.. Encoding.UTF8.GetBytes(head.Append("\r\n").ToString()), .. framed];
    }
}
