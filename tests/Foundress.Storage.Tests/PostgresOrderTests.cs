using Foundress.PostgresForTests;
using Foundress.Storage.Model;
using Foundress.Storage.Postgres;

namespace Foundress.Storage.Tests;

/// <summary>
/// PostgreSQL gives out sequence numbers before the commit. Whoever reads on from a cursor must meet every entry all the
/// same, however slow the writer with the lower number is.
/// </summary>
public class PostgresOrderTests
{
    [Fact]
    public async Task Read_WhileASlowWriterHoldsALowerNumber_PassesOverNothing()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        using var store = await book.OpenAsync(new BookStoreOptions { Patience = TimeSpan.FromMinutes(5) });
        using var slow = new PostgresDatabase(book.Folder.Data, book.Database!, new BookStoreOptions());
        await using var context = slow.Open();
        await using var transaction = await context.Database.BeginTransactionAsync();
        await slow.TakeTurnAsync(context, "home", default);
        await slow.AddNewAsync(context, [Some.Entry(1).ToRow(DateTimeOffset.UnixEpoch)], default);

        // Another operation does not wait.
        await store.AppendAsync("away", [Some.Entry(1, "away")]);
        var second = store.AppendAsync("home", [Some.Entry(2)]);
        // The second writer either waits for the slow one, which the server can see, or has gone past it.
        while (!second.IsCompleted && (long)(await book.ExecuteAsync("SELECT count(*) FROM pg_locks WHERE locktype = 'advisory' AND NOT granted"))! == 0)
            await Task.Delay(5);
        var before = await store.ReadAsync("home", 0, 10);
        await transaction.CommitAsync();
        await second;
        var after = await store.ReadAsync("home", before.Next, 10);
        Assert.Equal([Some.Entry(1), Some.Entry(2)], before.Entries.Concat(after.Entries));
    }

    // The same with the programs as they are: two others and two stores of this one write, a reader follows.
    [Fact]
    public async Task Read_FollowingManyWriters_MeetsEveryEntryInOnePass()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        var setting = (await PostgresCluster.Shared).Setting(book.Database!.Database);
        using var store = await book.OpenAsync();
        using var other = await book.OpenAsync();
        using var first = WriterProcess.Start(book.Folder.Path, "first", setting);
        using var second = WriterProcess.Start(book.Folder.Path, "second", setting);
        using var enough = new CancellationTokenSource();
        var met = new List<Guid>();
        var cursor = 0L;
        async Task ReadOnAsync()
        {
            EntryPage page;
            do
            {
                page = await other.ReadAsync("home", cursor, 7);
                met.AddRange(page.Entries.Select(entry => entry.Id.Value));
                cursor = page.Next;
            }
            while (page.More);
        }

        async Task WriteAsync(BookStore writer, int from)
        {
            for (var n = from; !enough.IsCancellationRequested; n += 2)
                await writer.AppendAsync("home", [Some.Entry(n), Some.Entry(n + 1)]);
        }

        var writing = Task.WhenAll(Task.Run(() => WriteAsync(store, 0)), Task.Run(() => WriteAsync(other, 1_000_000)));
        var others = Task.Run(() => WriterProcess.UntilAsync(300, first, second));
        while (!others.IsCompleted)
            await ReadOnAsync();
        await others;
        await enough.CancelAsync();
        await writing;
        await first.KillAsync();
        await second.KillAsync();
        // Until the server has ended what the killed ones had begun.
        while ((long)(await book.ExecuteAsync("SELECT count(*) FROM pg_stat_activity WHERE datname = current_database() AND state <> 'idle' AND pid <> pg_backend_pid()"))! > 0)
            await Task.Delay(5);
        await ReadOnAsync();
        var all = (await Some.AllAsync(store)).Select(entry => entry.Id.Value).ToArray();
        Assert.Equal(all, met);
        Assert.True(all.Length > 300);
    }

    [Fact]
    public async Task Append_WhereTheServerDoesNotWaitForTheDisk_WaitsAllTheSame()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        await book.ExecuteAsync($"ALTER DATABASE {book.Database!.Database} SET synchronous_commit = off");
        using var database = new PostgresDatabase(book.Folder.Data, book.Database, new BookStoreOptions());
        await using var context = database.Open();
        Assert.Equal("off", await PostgresSql.ScalarAsync(context, "SHOW synchronous_commit", default));
        await using var transaction = await context.Database.BeginTransactionAsync();
        await database.TakeTurnAsync(context, "home", default);
        Assert.Equal("on", await PostgresSql.ScalarAsync(context, "SHOW synchronous_commit", default));
    }
}
