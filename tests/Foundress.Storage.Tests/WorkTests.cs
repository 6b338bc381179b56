using Foundress.PostgresForTests;
using Foundress.Storage.Work;

namespace Foundress.Storage.Tests;

public class WorkTests
{
    private static readonly TimeSpan Long = TimeSpan.FromHours(1);

    [Fact]
    public async Task Work_InAFile_IsNotShared()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Sqlite);
        using var store = await book.OpenAsync();
        Assert.Null(store.Work);
    }

    [Fact]
    public async Task Enqueue_AskedForTwice_IsOneWork()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        using var store = await book.OpenAsync();
        var work = store.Work!;
        Assert.Equal(3, await work.EnqueueAsync([Item(1), Item(2), Item(3)]));
        Assert.Equal(1, await work.EnqueueAsync([Item(3), Item(4), Item(1)]));
        // Another input, another model, another operation and another apiary are other work.
        var key = Item(1).Key;
        Assert.Equal(4, await work.EnqueueAsync(
        [
            new(key with { InputHash = "other" }, ""), new(key with { ModelVersion = "2" }, ""),
            new(key with { Operation = "away" }, ""), new(key with { Apiary = Guid.Empty }, ""),
        ]));
        Assert.Equal(8, (await work.CountAsync())[WorkState.Waiting]);
    }

    [Fact]
    public async Task Take_ThenComplete_KeepsTheResultOnce()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        using var store = await book.OpenAsync();
        var work = store.Work!;
        await work.EnqueueAsync([Item(1), Item(2)]);
        var lease = Assert.Single(await work.TakeAsync("me", Long));
        Assert.Equal((Item(1).Key, Item(1).Input, 1), (lease.Key, lease.Input, lease.Attempt));
        Assert.Equal(new WorkOutcome(WorkState.Leased, null, null, 1), await work.FindAsync(lease.Key));
        Assert.True(await work.CompleteAsync(lease, "result"));
        // A second time, as after an answer that got lost, changes nothing.
        Assert.True(await work.CompleteAsync(lease, "another"));
        Assert.Equal(new WorkOutcome(WorkState.Done, "result", null, 1), await work.FindAsync(lease.Key));
        Assert.False(await work.RenewAsync(lease, Long));
        Assert.False(await work.FailAsync(lease, "late"));
        Assert.Equal(Item(2).Key, Assert.Single(await work.TakeAsync("me", Long, most: 5)).Key);
        Assert.Empty(await work.TakeAsync("me", Long, most: 5));
        Assert.Null(await work.FindAsync(Item(9).Key));
        Assert.Equal(0, await work.EnqueueAsync([Item(1)]));
    }

    [Fact]
    public async Task Take_AfterTheLeaseRanOut_GoesToAnotherAndTheFirstIsRefused()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        using var store = await book.OpenAsync();
        var work = store.Work!;
        await work.EnqueueAsync([Item(1)]);
        var slow = Assert.Single(await work.TakeAsync("slow", Long));
        Assert.Empty(await work.TakeAsync("quick", Long));
        await RunOutAsync(book);
        // Renewed in time it is still the first one's.
        Assert.True(await work.RenewAsync(slow, Long));
        Assert.Empty(await work.TakeAsync("quick", Long));
        await RunOutAsync(book);
        var quick = Assert.Single(await work.TakeAsync("quick", Long));
        Assert.Equal(2, quick.Attempt);
        Assert.False(await work.RenewAsync(slow, Long));
        Assert.False(await work.CompleteAsync(slow, "late"));
        Assert.False(await work.FailAsync(slow, "late"));
        Assert.True(await work.CompleteAsync(quick, "in time"));
        Assert.False(await work.CompleteAsync(slow, "later still"));
        Assert.Equal("in time", (await work.FindAsync(slow.Key))!.Result);
    }

    [Fact]
    public async Task Fail_AgainAndAgain_IsGivenUpAndDoesNotStopTheOthers()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        using var store = await book.OpenAsync();
        var work = store.Work!;
        await work.EnqueueAsync([Item(1), Item(2)]);
        for (var attempt = 1; attempt <= WorkQueue.GreatestAttempts; attempt++)
        {
            var lease = Assert.Single(await work.TakeAsync("me", Long));
            Assert.Equal((Item(1).Key, attempt), (lease.Key, lease.Attempt));
            Assert.True(await work.FailAsync(lease, $"trouble {attempt}"));
        }

        Assert.Equal(new WorkOutcome(WorkState.Failed, null, "trouble 5", 5), await work.FindAsync(Item(1).Key));
        // Work whose workers never come back is given up too.
        for (var attempt = 1; attempt <= WorkQueue.GreatestAttempts; attempt++)
        {
            Assert.Equal(Item(2).Key, Assert.Single(await work.TakeAsync("me", Long)).Key);
            await RunOutAsync(book);
        }

        Assert.Empty(await work.TakeAsync("me", Long));
        var outcome = await work.FindAsync(Item(2).Key);
        Assert.Equal((WorkState.Failed, "The last worker did not come back."), (outcome!.State, outcome.Trouble));
    }

    [Fact]
    public async Task Forget_Ended_LeavesTheRest()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        using var store = await book.OpenAsync();
        var work = store.Work!;
        await work.EnqueueAsync([Item(1), Item(2), Item(3)]);
        var leases = await work.TakeAsync("me", Long, most: 2);
        await work.CompleteAsync(leases[0], "result");
        Assert.Equal(0, await work.ForgetAsync(Long));
        await book.ExecuteAsync("UPDATE work SET ended_at = ended_at - interval '2 hours'");
        Assert.Equal(1, await work.ForgetAsync(Long));
        Assert.Null(await work.FindAsync(Item(1).Key));
        Assert.Equal([(WorkState.Waiting, 1L), (WorkState.Leased, 1L)], (await work.CountAsync()).OrderBy(one => one.Key).Select(one => (one.Key, one.Value)));
    }

    [Fact]
    public async Task Take_ByManyAtOnce_GivesEachPieceToOne()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        using var store = await book.OpenAsync();
        var others = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => book.OpenAsync()));
        // All ask for the same, in different orders.
        await Task.WhenAll(others.Select((other, n) => Task.Run(() =>
            other.Work!.EnqueueAsync([.. Enumerable.Range(0, 400).Select(number => Item((number * (n + 1)) % 401))]))));
        await store.Work!.EnqueueAsync([.. Enumerable.Range(0, 401).Select(Item)]);
        Assert.Equal(401, (await store.Work.CountAsync())[WorkState.Waiting]);
        var done = await Task.WhenAll(others.SelectMany(other => Enumerable.Range(0, 3).Select(n => Task.Run(async () =>
        {
            var mine = new List<WorkLease>();
            while (await other.Work!.TakeAsync($"worker {n}", Long, most: 7) is { Count: > 0 } leases)
            {
                foreach (var lease in leases)
                    Assert.True(await other.Work.CompleteAsync(lease, lease.Token.ToString()));
                mine.AddRange(leases);
            }

            return mine;
        }))));
        var all = done.SelectMany(leases => leases).ToArray();
        Assert.Equal(401, all.Length);
        Assert.Equal(401, all.Select(lease => lease.Number).Distinct().Count());
        Assert.All(all, lease => Assert.Equal(1, lease.Attempt));
        Array.ForEach(others, other => other.Dispose());
    }

    // Workers are killed with work in their hands; whoever comes after has all of it done once.
    [Fact]
    public async Task Take_WorkersKilledInTheMiddle_LosesNothingAndDoublesNothing()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        var setting = (await PostgresCluster.Shared).Setting(book.Database!.Database);
        using var store = await book.OpenAsync();
        await store.Work!.EnqueueAsync([.. Enumerable.Range(0, 300).Select(Item)]);
        var reported = new List<Guid>();
        for (var round = 0; round < 2; round++)
        {
            using var first = WriterProcess.Start(book.Folder.Path, "work", setting);
            using var second = WriterProcess.Start(book.Folder.Path, "work", setting);
            await WriterProcess.UntilAsync(20 + Random.Shared.Next(40), first, second);
            reported.AddRange(await first.KillAsync());
            reported.AddRange(await second.KillAsync());
        }

        await UntilQuietAsync(book);
        Assert.Equal(reported.Count, reported.Distinct().Count());
        var before = await store.Work.CountAsync();
        Assert.InRange(before[WorkState.Done], reported.Count, reported.Count + 4);
        // Each killed worker had at most three pieces in its hands, which the last one takes over in its turn.
        await RunOutAsync(book);
        using var last = WriterProcess.Start(book.Folder.Path, "work", setting);
        reported.AddRange(await last.EndAsync());
        Assert.Equal([(WorkState.Done, 300L)], (await store.Work.CountAsync()).Select(one => (one.Key, one.Value)));
        Assert.Equal(reported.Count, reported.Distinct().Count());
        for (var n = 0; n < 300; n++)
            Assert.Equal($"result of {Item(n).Input}", (await store.Work.FindAsync(Item(n).Key))!.Result);
    }

    private static WorkItem Item(int number) =>
        new(new WorkKey("home", new Guid(number, 0, 0, 0, 0, 0, 0, 0, 0, 0, 7), $"hash {number}", "1"), $"input {number}");

    private static Task<object?> RunOutAsync(TestBook book) =>
        book.ExecuteAsync("UPDATE work SET leased_until = clock_timestamp() - interval '1 second' WHERE state = 'leased'");

    // Until the server has ended what killed programs had begun.
    private static async Task UntilQuietAsync(TestBook book)
    {
        while ((long)(await book.ExecuteAsync("SELECT count(*) FROM pg_stat_activity WHERE datname = current_database() AND state <> 'idle' AND pid <> pg_backend_pid()"))! > 0)
            await Task.Delay(5);
    }
}
