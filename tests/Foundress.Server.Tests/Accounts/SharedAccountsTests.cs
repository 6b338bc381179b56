using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Foundress.Accounts;

namespace Foundress.Server.Tests.Accounts;

/// <summary>Several servers on one PostgreSQL database have the same people: what one is told the other knows at the next request.</summary>
public sealed class SharedAccountsTests(TwoServers servers) : IClassFixture<TwoServers>
{
    private readonly TwoServers _servers = servers.Required();

    [Fact]
    public async Task SignedIn_AtOneServer_IsKnownAtTheOther()
    {
        var anna = await _servers.JoinAsync("Anna", "home", Role.Keeper);
        var there = _servers.There(anna);
        Assert.Equal("Anna", (await there.ReadAsync("account")).GetProperty("name").GetString());
        Assert.Equal(HttpStatusCode.OK, (await there.GetAsync("operations/home/people")).StatusCode);
        using var phone = there.ByDeviceAlone();
        Assert.Equal(HttpStatusCode.OK, (await phone.SendAsync("home", anna.Entry(1))).StatusCode);
        // The session alone, without the device's own secret: sealed by one server, opened by the other.
        using var session = there.BySessionAlone();
        Assert.Equal(HttpStatusCode.OK, (await session.GetAsync("operations/home/people")).StatusCode);
        Assert.Contains((await session.ReadAsync("operations/home/sign-ins")).EnumerateArray(), line => line.GetProperty("name").GetString() == "Anna");
    }

    [Fact]
    public async Task DeviceTakenOff_AtOneServer_IsRefusedAtTheOther()
    {
        var ben = await _servers.JoinAsync("Ben", "off", Role.Helper);
        var there = _servers.There(ben);
        using var phone = there.ByDeviceAlone();
        using var session = there.BySessionAlone();
        Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("operations/off/entries")).StatusCode);
        var device = (await ben.ReadAsync("account/devices"))[0].GetProperty("id").GetGuid();
        Assert.Equal(HttpStatusCode.NoContent, (await ben.DeleteAsync($"account/devices/{device}")).StatusCode);
        foreach (var gone in new[] { phone, session, there })
            Assert.Equal(HttpStatusCode.Unauthorized, (await gone.GetAsync("operations/off/entries")).StatusCode);
    }

    [Fact]
    public async Task RoleAndPassword_ChangedAtOneServer_HoldAtTheOther()
    {
        var keeper = await _servers.JoinAsync("Keeper R", "roles", Role.Keeper);
        var helper = await _servers.JoinAsync("Helper R", "roles", Role.Helper);
        var there = _servers.There(helper);
        Assert.Equal(HttpStatusCode.OK, (await there.SendAsync("roles", helper.Entry(1, "roles"))).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await keeper.PutAsync($"operations/roles/people/{helper.Id}", new { role = "reader" })).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await there.SendAsync("roles", helper.Entry(2, "roles"))).StatusCode);
        using var session = there.BySessionAlone();
        Assert.Equal(HttpStatusCode.OK, (await session.GetAsync("account/devices")).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await helper.PostAsync("account/password", new { present = ClubSite.Password, @new = "four other words here" })).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await session.GetAsync("account/devices")).StatusCode);
    }

    [Fact]
    public async Task WrongPasswords_AtBothServers_AreCountedTogether()
    {
        await _servers.JoinAsync("Emil", "home", Role.Helper);
        foreach (var server in new[] { _servers.One, _servers.Other, _servers.One, _servers.Other, _servers.One })
            Assert.Equal(HttpStatusCode.Unauthorized, (await _servers.Stranger(server).PostAsync("account/sign-in", new { name = "Emil", password = "not the password" })).StatusCode);
        foreach (var server in new[] { _servers.One, _servers.Other })
            Assert.Equal(HttpStatusCode.Unauthorized, (await _servers.Stranger(server).PostAsync("account/sign-in", new { name = "Emil", password = ClubSite.Password })).StatusCode);
    }

    [Fact]
    public async Task Link_UsedAtBothServersAtOnce_LetsOneIn()
    {
        var secret = await _servers.LinkAsync("race", Role.Helper);
        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(n =>
            _servers.Stranger(n % 2 == 0 ? _servers.One : _servers.Other).PostAsync("account/join", new { secret, name = $"Racer {n}", password = ClubSite.Password })));
        Assert.Single(answers, answer => answer.IsSuccessStatusCode);
        Assert.Equal(5, answers.Count(answer => answer.StatusCode == HttpStatusCode.Unauthorized));
        Assert.Single(await new Members(_servers.Other.Accounts!).OfAsync("race"));
    }

    // Both look, both see another keeper, and both go: unless the second waits for the first.
    [Fact]
    public async Task LastTwoKeepers_RemovedAtBothServersAtOnce_LeaveOne()
    {
        for (var n = 0; n < 5; n++)
        {
            var operation = $"keepers {n}";
            var one = await _servers.JoinAsync($"One {n}", operation, Role.Keeper);
            var two = await _servers.JoinAsync($"Two {n}", operation, Role.Keeper);
            var answers = await Task.WhenAll(
                one.DeleteAsync($"operations/{operation}/people/{one.Id}"), _servers.There(two).DeleteAsync($"operations/{operation}/people/{two.Id}"));
            Assert.Equal([HttpStatusCode.NoContent, HttpStatusCode.Conflict], answers.Select(answer => answer.StatusCode).Order());
            Assert.Single(await new Members(_servers.One.Accounts!).OfAsync(operation));
        }
    }

    [Fact]
    public async Task DeviceName_EnrolledAtBothServersAtOnce_IsBoundToOne()
    {
        var one = await _servers.JoinAsync("First F", "home", Role.Helper);
        var two = _servers.There(await _servers.JoinAsync("Second S", "home", Role.Helper));
        // With a character that PostgreSQL's texts cannot hold.
        var answers = await Task.WhenAll(new[] { one, two }.Select(guest => guest.PostAsync("account/devices", new { name = "the\u0000same" })));
        Assert.Equal([HttpStatusCode.NoContent, HttpStatusCode.Conflict], answers.Select(answer => answer.StatusCode).Order());
        var names = new List<string>();
        foreach (var guest in new[] { one, two })
            names.AddRange((await guest.ReadAsync("account/devices")).EnumerateArray().Select(line => line.GetProperty("name").GetString()!));
        Assert.Single(names, name => name == "the\u0000same");
    }

    [Fact]
    public async Task Connections_Cut_AreToldOfOnceAndMadeAnew()
    {
        await using var own = new ClubSite(onPostgres: true);
        await own.InitializeAsync();
        var keeper = await own.JoinAsync("Keeper", "home", Role.Keeper);
        await (await PostgresForTests.PostgresCluster.Shared).ExecuteAsync(
            own.Database!.Database, "SELECT count(pg_terminate_backend(pid)) FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()");
        var answers = new List<HttpStatusCode>();
        do
        {
            using var answer = await keeper.GetAsync("operations/home/people");
            answers.Add(answer.StatusCode);
            if (answer.StatusCode == HttpStatusCode.ServiceUnavailable)
                Assert.Contains("Try again", (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("detail").GetString(), StringComparison.Ordinal);
        }
        while (answers[^1] == HttpStatusCode.ServiceUnavailable && answers.Count < 20);
        Assert.Equal(HttpStatusCode.OK, answers[^1]);
        Assert.All(answers.SkipLast(1), status => Assert.Equal(HttpStatusCode.ServiceUnavailable, status));
    }
}
