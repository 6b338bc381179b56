using CsCheck;
using Foundress.Book;
using Foundress.Book.Journal;

namespace Foundress.Storage.Tests;

public abstract class AppendTests(DatabaseKind kind)
{
    [Fact]
    public async Task Append_NewEntries_AreReadBackExactly()
    {
        await using var book = await TestBook.MakeAsync(kind);
        var entries = Some.Entries(5);
        using (var store = await book.OpenAsync())
            Assert.Equal(new AppendResult(5, 0), await store.AppendAsync("home", entries));
        using var again = await book.OpenAsync();
        Assert.Equal(entries, await Some.AllAsync(again));
    }

    [Fact]
    public async Task Append_GivenTwice_IsKnownTheSecondTime()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        await store.AppendAsync("home", Some.Entries(3));
        Assert.Equal(new AppendResult(2, 3), await store.AppendAsync("home", Some.Entries(5)));
        Assert.Equal(new AppendResult(1, 1), await store.AppendAsync("home", [Some.Entry(9), Some.Entry(9)]));
        Assert.Equal(6, await store.CountAsync("home"));
    }

    [Fact]
    public async Task Append_Nothing_IsNothing()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        Assert.Equal(default, await store.AppendAsync("home", []));
    }

    [Fact]
    public async Task Append_EntryOfAnotherOperation_IsRefusedWhole()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        var error = await Assert.ThrowsAsync<ArgumentException>(() =>
            store.AppendAsync("home", [Some.Entry(1), Some.Entry(2, operation: "away")]));
        Assert.Contains("away", error.Message, StringComparison.Ordinal);
        Assert.Empty(await store.OperationsAsync());
    }

    [Fact]
    public async Task Append_SameIdInTwoOperations_KeepsBoth()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        await store.AppendAsync("home", [Some.Entry(1)]);
        await store.AppendAsync("away", [Some.Entry(1, operation: "away")]);
        Assert.Equal([new("away", 1), new("home", 1)], await store.OperationsAsync());
    }

    // Names come from devices, which may hold anything.
    [Theory]
    [InlineData("nul \0 and substitute \u001a and both \u001a0 \0")]
    [InlineData("\U0001f41d d\u00e9j\u00e0 \u0644\u0627 \r\n\t ' \" \\")]
    public async Task Append_AnyCharacterInNames_IsReadBackExactly(string text)
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        var entry = Some.Entry(1, text) with { Author = text, Device = text, Kind = text, Payload = $"{{\"{new string('x', 60_000)}\":1}}" };
        Assert.Equal(new AppendResult(1, 0), await store.AppendAsync(text, [entry]));
        Assert.Equal(new AppendResult(0, 1), await store.AppendAsync(text, [entry]));
        Assert.Equal([entry], await Some.AllAsync(store, text));
        Assert.Equal([new(text, 1)], await store.OperationsAsync());
        Assert.Equal(1, await store.CountAsync(text));
    }

    [Fact]
    public async Task Operations_AreSortedAsTextOfBytes()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        foreach (var name in (string[])["b", "\u00e9", "A", "a", "B", "_"])
            await store.AppendAsync(name, [Some.Entry(1, name)]);
        Assert.Equal(["A", "B", "_", "a", "b", "\u00e9"], (await store.OperationsAsync()).Select(one => one.Operation));
    }

    [Fact]
    public async Task Append_IdTakenByAnEarlierEntry_TakesANewPlace()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        await store.AppendAsync("home", [Some.Entry(1, clock: 50), Some.Entry(2)]);
        var cursor = (await store.ReadAsync("home", 0, 10)).Next;
        var earlier = Some.Entry(1);
        Assert.Equal(new AppendResult(1, 0), await store.AppendAsync("home", [earlier]));
        // A reader who had read everything hears of it.
        Assert.Equal([earlier], (await store.ReadAsync("home", cursor, 10)).Entries);
    }

    // The reference is the ledger, which the phone runs.
    [Fact]
    public async Task Append_AnyOrderCutAndRepetition_GivesTheSetTheLedgerHas()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        var trial = 0;
        await Gen.Select(Some.Colliding.Array[1, 12].Array[1, 6], Gen.Int[0, 1]).SampleAsync(async (exchanges, repeat) =>
        {
            var operation = $"trial {Interlocked.Increment(ref trial)}";
            var given = exchanges.Select(x => Array.ConvertAll(x, e => e with { Operation = operation })).ToArray();
            var ledger = new Ledger();
            foreach (var exchange in given)
                ledger.Add(exchange);
            for (var n = 0; n <= repeat; n++)
            {
                foreach (var exchange in given.Reverse())
                    await store.AppendAsync(operation, exchange);
            }

            var stored = await Some.AllAsync(store, operation);
            Assert.Equal(ledger.Entries, stored.Order());
        }, iter: 60, threads: 2);
    }

    [Fact]
    public async Task Append_FromTwoStoresAtOnce_LosesNothing()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var server = await book.OpenAsync();
        using var line = await book.OpenAsync();
        async Task Write(BookStore store, int from)
        {
            for (var n = from; n < from + 200; n += 5)
                await store.AppendAsync("home", Some.Entries(5, from: n));
        }

        await Task.WhenAll(
            Task.Run(() => Write(server, 0)), Task.Run(() => Write(line, 100)), Task.Run(() => Write(line, 300)));
        Assert.Equal(500, await server.CountAsync("home"));
    }

    [Fact]
    public async Task Append_HundredThousandEntries_AreAllThere()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        for (var from = 0; from < 100_000; from += 10_000)
            await store.AppendAsync("home", Some.Entries(10_000, from: from));
        Assert.Equal(100_000, (await Some.AllAsync(store)).Distinct().Count());
    }
}

public sealed class AppendTestsOnSqlite() : AppendTests(DatabaseKind.Sqlite);

public sealed class AppendTestsOnPostgres() : AppendTests(DatabaseKind.Postgres);
