using CsCheck;
using Foundress.Book.Journal;

namespace Foundress.Storage.Tests;

/// <summary>Entries to try things with.</summary>
internal static class Some
{
    public static Entry Entry(int number, string operation = "home", long clock = 0, string? payload = null) => new(
        new EntryId(Id(number)), operation, "keeper", "phone", new HybridTime(1_750_000_000_000 + clock + number, 0), "jar", 1,
        payload ?? $$"""{ "on": "2025-07-01",  "n": {{number}} }""");

    public static Entry[] Entries(int count, string operation = "home", int from = 0) =>
        [.. Enumerable.Range(from, count).Select(number => Entry(number, operation))];

    /// <summary>Entries of which some share an id but nothing else.</summary>
    public static Gen<Entry> Colliding { get; } =
        Gen.Select(Gen.Int[0, 8], Gen.Long[0, 3], Gen.Int[0, 2]).Select((number, clock, text) => Entry(number, clock: clock, payload: $$"""{"n":{{text}}}"""));

    public static async Task<List<Entry>> AllAsync(BookStore store, string operation = "home")
    {
        var all = new List<Entry>();
        await foreach (var entry in store.ReadAllAsync(operation))
            all.Add(entry);
        return all;
    }

    private static Guid Id(int number) => new(number, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, 1);
}
