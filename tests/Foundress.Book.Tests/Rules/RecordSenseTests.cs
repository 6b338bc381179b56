using Foundress.Book.Demo;
using Foundress.Book.Journal;
using Foundress.Knowledge;

namespace Foundress.Book.Tests.Rules;

public sealed class RecordSenseTests
{
    private static readonly Entry[] Good = [.. DemoBook.Entries(KnowledgeBase.Load(), DemoBook.DefaultSeed, new DateOnly(2026, 9, 1))];

    [Theory]
    [InlineData("apiary", """{"apiary":"313be74e-ae72-8da5-8b78-d9817444ee36","latitude":1e308}""", "latitude")]
    [InlineData("apiary", """{"apiary":"313be74e-ae72-8da5-8b78-d9817444ee36","broodFrom":13}""", "broodFrom: 13 is not possible; it must be from 1 to 12")]
    [InlineData("jar", """{"on":"2026-07-01","method":"alcohol-wash","passes":[-3],"bees":{"basis":"Counted","count":300}}""", "mites: -3")]
    [InlineData("jar", """{"on":"2026-07-01","method":"alcohol-wash","passes":[3],"bees":{"basis":"Counted","count":0}}""", "bees: 0")]
    [InlineData("jar", """{"on":"2026-07-01","method":"alcohol-wash","passes":[],"bees":{"basis":"Counted","count":300}}""", "passes: 0")]
    [InlineData("jar", """{"on":"9999-12-31","method":"alcohol-wash","passes":[3],"bees":{"basis":"Counted","count":300}}""", "on: 9999-12-31")]
    [InlineData("jar", """{"on":"2026-07-01","method":"alcohol-wash","passes":[3],"bees":{"basis":77,"count":300}}""", "basis: '77'")]
    [InlineData("mite-fall", """{"colony":"313be74e-ae72-8da5-8b78-d9817444ee36","on":"2026-07-01","mites":3,"days":0}""", "days: 0 is not possible; it must be above 0")]
    [InlineData("opened-brood", """{"colony":"313be74e-ae72-8da5-8b78-d9817444ee36","on":"2026-07-01","brood":"Drone","cells":10,"infested":11}""", "infested: 11")]
    [InlineData("policy", """{"gear":[null]}""", "gear")]
    [InlineData("normals", """{"apiary":"313be74e-ae72-8da5-8b78-d9817444ee36","highs":[1],"lows":[]}""", "highs: 1")]
    public void State_RecordThatMakesNoSense_IsKeptAndToldOfAndDoesNotCount(string kind, string payload, string words)
    {
        var odd = Good[0] with { Id = new EntryId(new Guid(1, 2, 0x7003, 0x80, 0, 0, 0, 0, 0, 0, 1)), Kind = kind, Payload = payload };
        var book = new Ledger();
        book.Add(Good);
        var without = Said(book);
        book.Add([odd]);
        var told = Assert.Single(book.State.Unreadable);
        Assert.Equal(odd, told.Entry);
        Assert.Contains("makes no sense", told.Problem, StringComparison.Ordinal);
        Assert.Contains(words, told.Problem, StringComparison.Ordinal);
        Assert.True(book.Contains(odd.Id));
        Assert.Equal(without, Said(book));
    }

    // What the rules allow must never be called nonsense.
    [Fact]
    public void State_InventedBook_MakesSense()
    {
        var book = new Ledger();
        book.Add(Good);
        Assert.Empty(book.State.Unreadable);
    }

    private static string Said(Ledger book) =>
        $"{book.State.Jars.Count} jars, {string.Join(' ', book.State.Apiaries.Values.Select(apiary => apiary.Latitude))}, {book.State.Policy}";
}
