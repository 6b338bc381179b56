using System.Net;
using CsCheck;
using Foundress.Book.Journal;

namespace Foundress.Server.Tests.Fuzz;

/// <summary>One device's odd entries must not take the book from the others.</summary>
public class OddEntryTests(Site site) : IClassFixture<Site>
{
    private static readonly string[] Views =
        ["report?to=2026-09-01", "report?format=json", "report?format=text", "register", "register?format=csv", "register?format=json", "calendar.ics", "apiaries.geojson"];

    [Fact]
    public async Task Views_OfABookWithOddEntries_AreGivenAllTheSame()
    {
        var trial = 0;
        await OddEntries.Books("odd").SampleAsync(
            async book =>
            {
                var operation = $"odd {Interlocked.Increment(ref trial)}";
                Entry[] entries = [.. book.Select(entry => entry with { Operation = operation })];
                await site.SendAsync(operation, entries);
                foreach (var view in Views)
                {
                    using var answer = await site.Caller.GetAsync($"api/v1/operations/{Uri.EscapeDataString(operation)}/{view}");
                    Assert.True(answer.StatusCode == HttpStatusCode.OK, $"{answer.StatusCode} for {view}");
                }

                Assert.Equal(entries.Length, (await site.TakeAllAsync(operation)).Count);
            },
            iter: 150, threads: 2, print: book => string.Join('\n', book.TakeLast(45).Select(EntryJson.Write)));
    }
}
