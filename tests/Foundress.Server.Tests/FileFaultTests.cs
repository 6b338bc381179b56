using System.Net;
using Foundress.Storage;
using Microsoft.Data.Sqlite;

namespace Foundress.Server.Tests;

/// <summary>What the server answers when something is wrong with the SQLite file.</summary>
public class FileFaultTests : IAsyncLifetime
{
    private readonly Site _site = new();

    public ValueTask InitializeAsync() => _site.InitializeAsync();

    public async ValueTask DisposeAsync()
    {
        await _site.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Ready_TableGone_IsUnavailable()
    {
        Execute("DROP TABLE entries");
        await Problem.IsAsync(HttpStatusCode.ServiceUnavailable, "The book", await _site.Caller.GetAsync("health/ready"));
    }

    [Fact]
    public async Task Send_WhileAnotherProgramWrites_IsUnavailableAndMayBeRepeated()
    {
        await using (var other = new SqliteConnection($"Data Source={_site.Server.Store.Folder.Database};Pooling=false"))
        {
            await other.OpenAsync();
            await using var held = other.BeginTransaction();
            await Problem.IsAsync(
                HttpStatusCode.ServiceUnavailable, "another program", await _site.Caller.PostAsync(Site.Entries("home"), Site.Json(Site.Entry(1))));
        }

        await _site.SendAsync("home", Site.Entry(1));
        Assert.Single(await _site.TakeAllAsync("home"));
    }

    [Fact]
    public async Task Send_DiskFull_SaysSoAndKeepsWhatWasAcknowledged()
    {
        var site = new Site(onPostgres: false, new BookStoreOptions { GreatestPages = 60 });
        await site.InitializeAsync();
        await using (site)
        {
            var acknowledged = 0;
            while (true)
            {
                var exchange = Enumerable.Range(acknowledged, 100).Select(n => Site.Entry(n)).ToArray();
                var answer = await site.Caller.PostAsync(Site.Entries("home"), Site.Json(exchange));
                if (answer.StatusCode != HttpStatusCode.OK)
                {
                    await Problem.IsAsync(HttpStatusCode.InsufficientStorage, "no room left", answer);
                    break;
                }

                acknowledged += exchange.Length;
            }

            Assert.InRange(acknowledged, 100, 10_000);
            Assert.Equal(acknowledged, (await site.TakeAllAsync("home")).Count);
        }
    }

    private void Execute(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={_site.Server.Store.Folder.Database};Pooling=false");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
