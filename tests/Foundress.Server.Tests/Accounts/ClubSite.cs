using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Foundress.Accounts;
using Foundress.PostgresForTests;
using Foundress.Server.Security;
using Foundress.Storage;
using Microsoft.Extensions.Time.Testing;

namespace Foundress.Server.Tests.Accounts;

/// <summary>A real server with accounts on a free port, and people who come to it.</summary>
public class ClubSite : IAsyncLifetime
{
    internal const string Password = "four words in a row";

    private readonly string _data = Directory.CreateTempSubdirectory("foundress-test-").FullName;
    private readonly List<Guest> _guests = [];
    private readonly RateLimits _limits;
    private int _devices;

    public ClubSite()
        : this(onPostgres: false)
    {
    }

    internal ClubSite(bool onPostgres, RateLimits? limits = null) =>
        (OnPostgres, _limits) = (onPostgres, limits ?? new RateLimits(100_000, 100_000));

    /// <summary>Whether book and accounts lie in PostgreSQL.</summary>
    internal bool OnPostgres { get; }

    internal PostgresAddress? Database { get; private set; }

    internal FakeTimeProvider Time { get; } = new(DateTimeOffset.UtcNow);

    internal FoundressServer Server { get; private set; } = null!;

    internal string Data => _data;

    internal OneTimeLinks Links => new(Server.Accounts!);

    public async ValueTask InitializeAsync()
    {
        if (OnPostgres && PostgresPrograms.Missing is not null)
            return;
        if (OnPostgres)
            Database = await (await PostgresCluster.Shared).BookAsync();
        await StartAsync();
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var guest in _guests)
            guest.Dispose();
        if (Server is not null)
            await Server.DisposeAsync();
        if (Database is not null)
            await (await PostgresCluster.Shared).DropAsync(Database);
        Directory.Delete(_data, recursive: true);
        GC.SuppressFinalize(this);
    }

    /// <summary>The site, for a test that cannot do without; skips the test where there is no PostgreSQL for it.</summary>
    internal ClubSite Required()
    {
        Assert.SkipWhen(OnPostgres && PostgresPrograms.Missing is not null, PostgresPrograms.Missing ?? "");
        return this;
    }

    /// <summary>Stops the server and starts it on the same folder.</summary>
    internal async Task RestartAsync()
    {
        await StopAsync();
        await StartAsync();
    }

    /// <summary>Stops the server for good, or until <see cref="StartAsync"/>.</summary>
    internal async Task StopAsync()
    {
        await Server.DisposeAsync();
        Server = null!;
    }

    /// <summary>Starts a stopped server on the same folder with another database.</summary>
    internal Task StartOnAsync(PostgresAddress database)
    {
        Database = database;
        return StartAsync();
    }

    /// <summary>Somebody who has not signed in.</summary>
    internal Guest Stranger()
    {
        var guest = new Guest(new UriBuilder(Server.Address) { Host = "127.0.0.1" }.Uri);
        _guests.Add(guest);
        return guest;
    }

    /// <summary>A link as the console makes it.</summary>
    internal async Task<string> LinkAsync(string operation, Role role, bool administrator = false, TimeSpan? lasts = null) =>
        (await Links.MakeAsync(new LinkOffer(operation, role, "", lasts ?? LinkOffer.Usual, administrator), null)).Secret;

    /// <summary>Somebody who has come in by a link, on a device of their own.</summary>
    internal async Task<Guest> JoinAsync(string name, string operation, Role role, bool administrator = false)
    {
        var guest = Stranger();
        var answer = await guest.PostAsync("account/join", new
        {
            secret = await LinkAsync(operation, role, administrator),
            name,
            password = Password,
            device = new { name = $"device-{Interlocked.Increment(ref _devices)}", label = name + "'s phone" },
        });
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        guest.Take(await answer.Content.ReadFromJsonAsync<JsonElement>());
        return guest;
    }

    /// <summary>Makes somebody known a member of another operation too.</summary>
    internal async Task JoinAlsoAsync(Guest guest, string operation, Role role)
    {
        var answer = await guest.PostAsync("account/join", new { secret = await LinkAsync(operation, role) });
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    private async Task StartAsync() => Server = await FoundressServer.StartAsync(
        new ServerOptions(0, _data, Demo: false, Database) { Reach = new Reach { Accounts = true } },
        storage: new BookStoreOptions { BackupAtStart = false, Time = Time }, limits: _limits);
}

/// <summary>The same with book and accounts in PostgreSQL.</summary>
public sealed class PostgresClubSite() : ClubSite(onPostgres: true);
