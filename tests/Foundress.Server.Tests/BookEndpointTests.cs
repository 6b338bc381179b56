using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Foundress.Storage;
using Microsoft.Data.Sqlite;

namespace Foundress.Server.Tests;

public class BookEndpointTests : IAsyncLifetime
{
    private readonly Site _site = new();

    public ValueTask InitializeAsync() => _site.InitializeAsync();

    public async ValueTask DisposeAsync()
    {
        await _site.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task About_BookWithDemo_TellsVersionAndCounts()
    {
        var empty = await _site.Caller.GetFromJsonAsync<JsonElement>("api/v1/about");
        Assert.Equal(0, empty.GetProperty("operations").GetArrayLength());
        Assert.False(empty.GetProperty("demo").GetBoolean());
        await _site.SendAsync("home", Site.Entry(1), Site.Entry(2));
        await _site.SendAsync("demo", Site.Entry(1, "demo"));
        var about = await _site.Caller.GetFromJsonAsync<JsonElement>("api/v1/about");
        Assert.Equal("""[{"id":"demo","entries":1},{"id":"home","entries":2}]""", about.GetProperty("operations").GetRawText());
        Assert.True(about.GetProperty("demo").GetBoolean());
        Assert.Equal("0.1.0", about.GetProperty("version").GetString());
        Assert.Equal(_site.Server.Store.Incarnation, about.GetProperty("incarnation").GetGuid());
    }

    [Fact]
    public async Task Remove_Demo_LeavesTheRest()
    {
        await _site.SendAsync("home", Site.Entry(1));
        await _site.SendAsync("demo", Site.Entry(1, "demo"), Site.Entry(2, "demo"));
        var answer = await _site.Caller.DeleteAsync("api/v1/operations/demo");
        Assert.Equal("""{"removed":2}""", await answer.Content.ReadAsStringAsync());
        Assert.Empty(await _site.TakeAllAsync("demo"));
        Assert.Single(await _site.TakeAllAsync("home"));
    }

    [Fact]
    public async Task Remove_AnythingElse_IsForbidden()
    {
        await _site.SendAsync("home", Site.Entry(1));
        await Problem.IsAsync(HttpStatusCode.Forbidden, "never erased", await _site.Caller.DeleteAsync("api/v1/operations/home"));
        Assert.Single(await _site.TakeAllAsync("home"));
    }

    [Fact]
    public async Task Backups_Made_AreListed()
    {
        await _site.SendAsync("home", Site.Entry(1));
        var made = await _site.Caller.PostAsync("api/v1/backups", null);
        Assert.Equal(HttpStatusCode.Created, made.StatusCode);
        var name = (await made.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("name").GetString();
        var list = await _site.Caller.GetFromJsonAsync<JsonElement>("api/v1/backups");
        Assert.Equal(name, Assert.Single(list.GetProperty("backups").EnumerateArray()).GetProperty("name").GetString());
        Assert.True(File.Exists(Path.Combine(list.GetProperty("folder").GetString()!, name!)));
    }

    [Theory]
    [InlineData("live")]
    [InlineData("ready")]
    public async Task Health_Running_IsGood(string name) =>
        Assert.Equal($$"""{"status":"{{name}}"}""", await _site.Caller.GetStringAsync($"health/{name}"));

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
        var site = new Site(new BookStoreOptions { GreatestPages = 60 });
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
