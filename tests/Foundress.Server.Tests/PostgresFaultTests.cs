using System.Net;

namespace Foundress.Server.Tests;

/// <summary>What the server answers when something is wrong with the PostgreSQL database.</summary>
public class PostgresFaultTests : IAsyncLifetime
{
    private readonly Site _site = new(onPostgres: true);

    public ValueTask InitializeAsync() => _site.Required().InitializeAsync();

    public async ValueTask DisposeAsync()
    {
        await _site.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Ready_TableGone_IsUnavailable()
    {
        await _site.ExecuteAsync("DROP TABLE entries");
        await Problem.IsAsync(HttpStatusCode.ServiceUnavailable, "The book", await _site.Caller.GetAsync("health/ready"));
    }

    [Fact]
    public async Task Send_DiskFull_SaysSoAndKeepsWhatWasAcknowledged()
    {
        await _site.SendAsync("home", Site.Entry(1), Site.Entry(2));
        await _site.ExecuteAsync(
            """
            CREATE FUNCTION full_disk() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION 'no space' USING ERRCODE = '53100'; END $$;
            CREATE TRIGGER full_disk BEFORE INSERT ON entries FOR EACH ROW WHEN (NEW.id = '00000005-0000-7000-8000-000000000001') EXECUTE FUNCTION full_disk();
            """);
        await Problem.IsAsync(
            HttpStatusCode.InsufficientStorage, "no room left",
            await _site.Caller.PostAsync(Site.Entries("home"), Site.Json(Site.Entry(3), Site.Entry(4), Site.Entry(5))));
        Assert.Equal([Site.Entry(1), Site.Entry(2)], await _site.TakeAllAsync("home"));
    }

    [Fact]
    public async Task Send_ConnectionsCut_IsAnsweredAllTheSame()
    {
        await _site.SendAsync("home", Site.Entry(1));
        await _site.ExecuteAsync("SELECT count(pg_terminate_backend(pid)) FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()");
        await _site.SendAsync("home", Site.Entry(2));
        Assert.Equal(2, (await _site.TakeAllAsync("home")).Count);
    }
}
