using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Foundress.Accounts;
using Foundress.Server.Security;
using Foundress.Storage;
using Microsoft.Extensions.Time.Testing;

namespace Foundress.Server.Tests.Accounts;

/// <summary>A real server with accounts on a free port, and people who come to it.</summary>
public sealed class ClubSite : IAsyncLifetime
{
    internal const string Password = "four words in a row";

    private readonly string _data = Directory.CreateTempSubdirectory("foundress-test-").FullName;
    private readonly List<Guest> _guests = [];
    private readonly RateLimits _limits;
    private int _devices;

    public ClubSite()
        : this(new RateLimits(100_000, 100_000))
    {
    }

    internal ClubSite(RateLimits limits) => _limits = limits;

    internal FakeTimeProvider Time { get; } = new(DateTimeOffset.UtcNow);

    internal FoundressServer Server { get; private set; } = null!;

    internal string Data => _data;

    internal OneTimeLinks Links => new(Server.Accounts!);

    public async ValueTask InitializeAsync() => await StartAsync();

    public async ValueTask DisposeAsync()
    {
        foreach (var guest in _guests)
            guest.Dispose();
        await Server.DisposeAsync();
        Directory.Delete(_data, recursive: true);
    }

    /// <summary>Stops the server and starts it on the same folder.</summary>
    internal async Task RestartAsync()
    {
        await Server.DisposeAsync();
        await StartAsync();
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
        new ServerOptions(0, _data, Demo: false) { Reach = new Reach { Accounts = true } },
        storage: new BookStoreOptions { BackupAtStart = false, Time = Time }, limits: _limits);
}
