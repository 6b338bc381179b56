using Foundress.PostgresForTests;

namespace Foundress.Storage.Tests;

/// <summary>
/// Killed at moments that differ from run to run, which is the point: whatever the moment, no acknowledged entry may be lost.
/// </summary>
public class CrashTests
{
    [Fact]
    public async Task Append_WritersKilledAgainAndAgain_LoseNothingAcknowledged()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Sqlite);
        await KillWritersAsync(book, null);
    }

    [Fact]
    public async Task Append_WritersToPostgresKilledAgainAndAgain_LoseNothingAcknowledged()
    {
        Assert.SkipWhen(PostgresPrograms.Missing is not null, PostgresPrograms.Missing ?? "");
        await using var cluster = await PostgresCluster.StartAsync(durable: true);
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres, cluster: cluster);
        await KillWritersAsync(book, cluster.Setting(book.Database!.Database));
    }

    [Fact]
    public async Task Append_PostgresStoppedAtOnceAgainAndAgain_LosesNothingAcknowledged()
    {
        Assert.SkipWhen(PostgresPrograms.Missing is not null, PostgresPrograms.Missing ?? "");
        await using var cluster = await PostgresCluster.StartAsync(durable: true);
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres, cluster: cluster);
        var setting = cluster.Setting(book.Database!.Database);
        var acknowledged = new HashSet<Guid>();
        // Open all the while: it must find its way back to the server.
        using var store = await book.OpenAsync();
        for (var round = 0; round < 4; round++)
        {
            using var first = WriterProcess.Start(book.Folder.Path, $"first {round}", setting);
            using var second = WriterProcess.Start(book.Folder.Path, $"second {round}", setting);
            await WriterProcess.UntilAsync(10 + Random.Shared.Next(150), first, second);
            await cluster.CrashAsync();
            // They end by themselves, with an error and not with an acknowledgement.
            acknowledged.UnionWith(await first.EndAsync());
            acknowledged.UnionWith(await second.EndAsync());
            var error = await Assert.ThrowsAsync<StorageException>(() => store.CountAsync("home"));
            Assert.Equal(StorageFault.Unreachable, error.Fault);
            await cluster.StartAgainAsync();
            await NothingIsMissingAsync(store, acknowledged);
        }
    }

    private static async Task KillWritersAsync(TestBook book, string? setting)
    {
        var acknowledged = new HashSet<Guid>();
        for (var round = 0; round < 5; round++)
        {
            using var first = WriterProcess.Start(book.Folder.Path, $"first {round}", setting);
            using var second = WriterProcess.Start(book.Folder.Path, $"second {round}", setting);
            await WriterProcess.UntilAsync(10 + Random.Shared.Next(150), first, second);
            acknowledged.UnionWith(await first.KillAsync());
            acknowledged.UnionWith(await second.KillAsync());
            using var store = await book.OpenAsync();
            await NothingIsMissingAsync(store, acknowledged);
        }
    }

    private static async Task NothingIsMissingAsync(BookStore store, HashSet<Guid> acknowledged)
    {
        var stored = (await Some.AllAsync(store)).Select(entry => entry.Id.Value).ToHashSet();
        Assert.Empty(acknowledged.Except(stored));
        // A server may still be at the last exchange of three of each writer, which nobody waits for any more.
        Assert.InRange(await store.CheckAsync(), stored.Count, stored.Count + 6);
    }
}
