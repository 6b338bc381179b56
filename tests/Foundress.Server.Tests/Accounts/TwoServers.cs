using Foundress.Accounts;
using Foundress.PostgresForTests;
using Foundress.Server.Security;
using Foundress.Storage;

namespace Foundress.Server.Tests.Accounts;

/// <summary>Two servers on one PostgreSQL database, started at once while it was empty, each with a folder of its own.</summary>
public sealed class TwoServers : IAsyncLifetime
{
    private readonly DirectoryInfo[] _folders = [Directory.CreateTempSubdirectory("foundress-test-"), Directory.CreateTempSubdirectory("foundress-test-")];
    private readonly List<Guest> _guests = [];
    private PostgresAddress? _database;
    private FoundressServer[] _servers = [];
    private int _devices;

    internal FoundressServer One => _servers[0];

    internal FoundressServer Other => _servers[1];

    public async ValueTask InitializeAsync()
    {
        if (PostgresPrograms.Missing is not null)
            return;
        _database = await (await PostgresCluster.Shared).EmptyAsync();
        _servers = await Task.WhenAll(_folders.Select(folder => Task.Run(() => FoundressServer.StartAsync(
            new ServerOptions(0, folder.FullName, Demo: false, _database) { Reach = new Reach { Accounts = true } },
            storage: new BookStoreOptions { BackupAtStart = false }, limits: new RateLimits(100_000, 100_000)))));
    }

    public async ValueTask DisposeAsync()
    {
        _guests.ForEach(guest => guest.Dispose());
        foreach (var server in _servers)
            await server.DisposeAsync();
        if (_database is not null)
            await (await PostgresCluster.Shared).DropAsync(_database);
        Array.ForEach(_folders, folder => folder.Delete(recursive: true));
    }

    /// <summary>Skips the test where there is no PostgreSQL for it.</summary>
    internal TwoServers Required()
    {
        Assert.SkipWhen(PostgresPrograms.Missing is not null, PostgresPrograms.Missing ?? "");
        return this;
    }

    /// <summary>Somebody at one of the servers who has not signed in.</summary>
    internal Guest Stranger(FoundressServer server)
    {
        var guest = new Guest(new UriBuilder(server.Address) { Host = "127.0.0.1" }.Uri);
        _guests.Add(guest);
        return guest;
    }

    /// <summary>The same browser with all its cookies at the other server, as a proxy may pass it on.</summary>
    internal Guest There(Guest guest)
    {
        var moved = guest.MovedTo(Other.Address);
        _guests.Add(moved);
        return moved;
    }

    internal async Task<string> LinkAsync(string operation, Role role) =>
        (await new OneTimeLinks(One.Accounts!).MakeAsync(new LinkOffer(operation, role, "", LinkOffer.Usual), null)).Secret;

    /// <summary>Somebody who came in at one server, on a device of their own.</summary>
    internal async Task<Guest> JoinAsync(string name, string operation, Role role)
    {
        var guest = Stranger(One);
        var answer = await guest.PostAsync("account/join", new { secret = await LinkAsync(operation, role), name, password = ClubSite.Password, device = new { name = $"device-{Interlocked.Increment(ref _devices)}" } });
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        guest.Take(System.Text.Json.JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement);
        return guest;
    }
}
