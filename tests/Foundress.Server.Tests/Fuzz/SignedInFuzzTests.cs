using System.Net;
using System.Text;
using CsCheck;
using Foundress.Accounts;
using Foundress.Server.Security;
using Foundress.Server.Tests.Accounts;
using Microsoft.AspNetCore.Routing;

namespace Foundress.Server.Tests.Fuzz;

/// <summary>The same on a server with accounts, from somebody who has signed in and so is let through to everything a keeper may.</summary>
public sealed class SignedInFuzzTests(ClubSite site) : IClassFixture<ClubSite>
{
    [Fact]
    public async Task Requests_OfAKeeper_AreAnsweredOrRefusedInGoodForm()
    {
        var keeper = await site.JoinAsync("Keeper", "home", Role.Keeper);
        Assert.Equal(HttpStatusCode.OK, (await keeper.SendAsync("home", keeper.Entry(1), keeper.Entry(2))).StatusCode);
        // Whoever signs out is nobody from then on; the files of the app are tried elsewhere.
        var routes = AccessRules.All.Where(rule => rule.Method != "*" && rule.Pattern[0] == '/' && !rule.Pattern.EndsWith("/sign-out", StringComparison.Ordinal))
            .Select(rule => $"{rule.Method} {rule.Pattern}").ToArray();
        Assert.True(routes.Length > 40, $"only {routes.Length} addresses");
        var shown = Encoding.ASCII.GetBytes($"Cookie: {keeper.Cookies}\r\nSec-Fetch-Site: same-origin\r\n");
        var seen = new int[600];
        await RequestGen.Requests(routes).SampleAsync(
            async request =>
            {
                // Behind the first line; some requests then say two things of where they come from.
                var end = request.AsSpan().IndexOf("\r\n"u8) + 2;
                byte[] whole = [.. request[..end], .. shown, .. request[end..]];
                var answer = await RawAnswer.ToRequestAsync(site.Server.Address.Port, whole);
                Interlocked.Increment(ref seen[answer.Status]);
                EndpointFuzzTests.Check(WithoutCookie(answer), Encoding.UTF8.GetString(request));
            },
            iter: 1_500, threads: 2, print: request => Encoding.UTF8.GetString(request));
        // It was let through to what it is meant to reach.
        Assert.True(seen[200] > 100 && seen[400] > 50 && seen[403] > 50 && seen[404] > 20 && seen[401] < seen[200], string.Join(' ', seen.Select((n, status) => (n, status)).Where(one => one.n > 0)));
        Assert.Equal(HttpStatusCode.OK, (await keeper.GetAsync("operations/home/people")).StatusCode);
        var held = new List<Foundress.Book.Journal.Entry>();
        await foreach (var entry in site.Server.Store.ReadAllAsync("home"))
            held.Add(entry);
        Assert.Equal([keeper.Entry(1), keeper.Entry(2)], held);
        Assert.Equal("Keeper", Assert.Single(await new Members(site.Server.Accounts!).OfAsync("home")).Name);
    }

    // Only a server with accounts sets any: for the challenge of a passkey.
    private static RawAnswer WithoutCookie(RawAnswer answer)
    {
        if (!answer.Headers.TryGetValue("Set-Cookie", out var cookie))
            return answer;
        Assert.StartsWith("foundress", cookie, StringComparison.Ordinal);
        Assert.Contains("samesite=strict; httponly", cookie, StringComparison.OrdinalIgnoreCase);
        return answer with { Headers = answer.Headers.Where(header => header.Key != "Set-Cookie").ToDictionary(StringComparer.OrdinalIgnoreCase) };
    }
}
