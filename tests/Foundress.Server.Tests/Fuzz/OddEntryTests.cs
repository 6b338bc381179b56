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
                var answer = await site.SendAsync(operation, entries);
                // What is refused is named; all else is kept.
                var kept = answer.GetProperty("accepted").GetInt32();
                Assert.Equal(entries.Length, kept + answer.GetProperty("refused").GetArrayLength());
                foreach (var view in Views)
                {
                    using var given = await site.Caller.GetAsync($"api/v1/operations/{Uri.EscapeDataString(operation)}/{view}");
                    Assert.True(given.StatusCode == HttpStatusCode.OK, $"{given.StatusCode} for {view}");
                }

                Assert.Equal(kept, (await site.TakeAllAsync(operation)).Count);
            },
            iter: 150, threads: 2, print: book => string.Join('\n', book.TakeLast(45).Select(EntryJson.Write)));
    }
}
