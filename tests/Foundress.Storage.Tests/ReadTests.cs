namespace Foundress.Storage.Tests;

public abstract class ReadTests(DatabaseKind kind)
{
    [Fact]
    public async Task Read_InPages_MeetsEveryEntryOnce()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        var entries = Some.Entries(7);
        await store.AppendAsync("home", entries);
        await store.AppendAsync("away", Some.Entries(4, "away"));
        var first = await store.ReadAsync("home", 0, 4);
        Assert.Equal(entries[..4], first.Entries);
        Assert.True(first.More);
        var second = await store.ReadAsync("home", first.Next, 3);
        Assert.Equal(entries[4..], second.Entries);
        Assert.False(second.More);
        var third = await store.ReadAsync("home", second.Next, 3);
        Assert.Equal((0, second.Next, false), (third.Entries.Count, third.Next, third.More));
    }

    [Fact]
    public async Task Read_UnknownOperation_IsEmpty()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        Assert.Empty((await store.ReadAsync("nobody's", 0, 10)).Entries);
    }

    [Fact]
    public async Task Read_VeryLongPayloads_GivesShortPages()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        var payload = $$"""{"note":"{{new string('x', 60_000)}}"}""";
        var entries = Enumerable.Range(0, 150).Select(n => Some.Entry(n, payload: payload)).ToArray();
        await store.AppendAsync("home", entries);
        var page = await store.ReadAsync("home", 0, 150);
        Assert.True(page.More);
        Assert.InRange(page.Entries.Count, 1, 149);
        Assert.Equal(entries, await Some.AllAsync(store));
    }

    [Theory]
    [InlineData(-1, 10)]
    [InlineData(0, 0)]
    [InlineData(0, 2_001)]
    public async Task Read_CursorOrLimitOutOfRange_IsRefused(long after, int limit)
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => store.ReadAsync("home", after, limit));
    }

    [Fact]
    public async Task RemoveDemo_BesideRealRecords_RemovesOnlyTheDemo()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        await store.AppendAsync("home", Some.Entries(3));
        await store.AppendAsync("demo", Some.Entries(2, "demo"));
        Assert.Equal(2, await store.RemoveDemoAsync());
        Assert.Equal([new("home", 3)], await store.OperationsAsync());
        Assert.Equal(0, await store.RemoveDemoAsync());
    }

    [Fact]
    public async Task RemoveDemo_ThenAdded_NeverReusesACursor()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        await store.AppendAsync("demo", Some.Entries(2, "demo"));
        var cursor = (await store.ReadAsync("demo", 0, 10)).Next;
        await store.RemoveDemoAsync();
        await store.AppendAsync("demo", Some.Entries(2, "demo"));
        Assert.Equal(2, (await store.ReadAsync("demo", cursor, 10)).Entries.Count);
    }
}

public sealed class ReadTestsOnSqlite() : ReadTests(DatabaseKind.Sqlite);

public sealed class ReadTestsOnPostgres() : ReadTests(DatabaseKind.Postgres);
