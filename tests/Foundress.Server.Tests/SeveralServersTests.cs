using Foundress.Book.Journal;
using Foundress.PostgresForTests;

namespace Foundress.Server.Tests;

/// <summary>Several servers on one PostgreSQL database are one book.</summary>
public class SeveralServersTests
{
    [Fact]
    public async Task Exchange_ThroughThreeServersAtOnce_GivesEveryReaderEverything()
    {
        Assert.SkipWhen(PostgresPrograms.Missing is not null, PostgresPrograms.Missing ?? "");
        var cluster = await PostgresCluster.Shared;
        var database = await cluster.EmptyAsync();
        var folders = Enumerable.Range(0, 3).Select(_ => Directory.CreateTempSubdirectory("foundress-test-")).ToArray();
        // Started at once on a database without tables.
        var servers = await Task.WhenAll(folders.Select(folder => Task.Run(() => FoundressServer.StartAsync(new ServerOptions(0, folder.FullName, Demo: false, database)))));
        var callers = Array.ConvertAll(servers, server => new HttpClient { BaseAddress = new UriBuilder(server.Address) { Host = "127.0.0.1" }.Uri });
        try
        {
            Assert.Single(servers.Select(server => server.Store.Incarnation).Distinct());
            using var written = new CancellationTokenSource();
            // Each reader follows through another server while all are being written to, and never goes back.
            var readers = Enumerable.Range(0, 3).Select(n => Task.Run(() => FollowAsync(servers[(n + 1) % 3], written.Token))).ToArray();
            await Task.WhenAll(Enumerable.Range(0, 3).Select(n => Task.Run(async () =>
            {
                for (var from = 0; from < 300; from += 3)
                {
                    // Every entry comes twice, through two of the servers.
                    var entries = Enumerable.Range(from + (300 * n), 3).Select(number => Site.Entry(number)).ToArray();
                    foreach (var caller in (HttpClient[])[callers[n], callers[(n + 1) % 3]])
                        (await caller.PostAsync(Site.Entries("home"), Site.Json(entries))).EnsureSuccessStatusCode();
                }
            })));
            await written.CancelAsync();
            foreach (var met in await Task.WhenAll(readers))
                Assert.Equal(Enumerable.Range(0, 900).Select(number => Site.Entry(number)), met.Order());
        }
        finally
        {
            Array.ForEach(callers, caller => caller.Dispose());
            foreach (var server in servers)
                await server.DisposeAsync();
            Array.ForEach(folders, folder => folder.Delete(recursive: true));
            await cluster.DropAsync(database);
        }
    }

    private static async Task<List<Entry>> FollowAsync(FoundressServer server, CancellationToken written)
    {
        var met = new List<Entry>();
        var cursor = 0L;
        while (true)
        {
            // Looked at first: what was written before is then met below.
            var last = written.IsCancellationRequested;
            var page = await server.Store.ReadAsync("home", cursor, 50, CancellationToken.None);
            met.AddRange(page.Entries);
            cursor = page.Next;
            if (last && !page.More)
                return met;
        }
    }
}
