using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Foundress.Accounts;
using Foundress.Book.Journal;

namespace Foundress.Server.Tests.Accounts;

/// <summary>Whose entries are taken from whom.</summary>
public abstract class EntryGateTests(ClubSite site)
{
    [Fact]
    public async Task Helper_SendsOwnRecords_TheyAreTaken()
    {
        var (_, helper, _) = await PeopleAsync("own");
        // Written before the account was there, under no member's name.
        var early = helper.Entry(2, "own") with { Author = "keeper" };
        Assert.Equal("2 taken", await SendAsync(helper, "own", helper.Entry(1, "own"), early));
        using var phone = helper.ByDeviceAlone();
        Assert.Equal("1 taken", await SendAsync(phone, "own", helper.Entry(3, "own")));
    }

    [Fact]
    public async Task Helper_WritesAsAnother_IsRefusedAndNothingIsKept()
    {
        var (keeper, helper, other) = await PeopleAsync("other");
        Assert.Equal(
            "0 taken, 0 device, 1 device, 2 author, 3 author, 4 author",
            await SendAsync(
                helper, "other",
                helper.Entry(1, "other") with { Device = keeper.Device },
                helper.Entry(2, "other") with { Device = "a phone nobody enrolled" },
                helper.Entry(3, "other") with { Author = keeper.Name },
                helper.Entry(4, "other") with { Author = other.Name.ToUpperInvariant() + " " },
                // Full-width letters look the same to a reader.
                helper.Entry(5, "other") with { Author = string.Concat(other.Name.Select(c => c is >= 'a' and <= 'z' ? (char)(c + 0xFEE0) : c)) }));
        Assert.Empty(await BookAsync("other"));
    }

    [Fact]
    public async Task Helper_WritesAsAFormerMember_IsRefused()
    {
        var (keeper, helper, other) = await PeopleAsync("former");
        Assert.Equal(HttpStatusCode.NoContent, (await keeper.DeleteAsync($"operations/former/people/{other.Id}")).StatusCode);
        Assert.Equal("0 taken, 0 author", await SendAsync(helper, "former", helper.Entry(1, "former") with { Author = other.Name }));
    }

    // The book keeps, of two entries under one id, the one with the earlier clock: without a guard that would let anybody erase.
    [Fact]
    public async Task Helper_SendsAnotherEntryUnderAnIdOfTheBook_DoesNotTakeItsPlace()
    {
        var (keeper, helper, _) = await PeopleAsync("place");
        var held = keeper.Entry(1, "place");
        Assert.Equal("1 taken", await SendAsync(keeper, "place", held));
        var earlier = helper.Entry(1, "place") with { Clock = new HybridTime(1_000, 0), Payload = """{"n": "gone"}""" };
        Assert.Equal("0 taken, 0 id", await SendAsync(helper, "place", earlier));
        Assert.Equal([held], await BookAsync("place"));
        // Their own they may.
        var own = helper.Entry(2, "place");
        Assert.Equal("1 taken", await SendAsync(helper, "place", own));
        Assert.Equal("1 taken", await SendAsync(helper, "place", own with { Clock = new HybridTime(2_000, 0) }));
    }

    // After a restored backup, or when asked to copy everything again, a phone gives back all it holds.
    [Fact]
    public async Task Helper_SendsBackWhatTheBookHolds_IsKnown()
    {
        var (keeper, helper, _) = await PeopleAsync("back");
        var held = keeper.Entry(1, "back");
        await SendAsync(keeper, "back", held);
        Assert.Equal("0 taken, 1 known", await SendAsync(helper, "back", held));
        Assert.Equal("1 taken, 1 known", await SendAsync(helper, "back", held, helper.Entry(2, "back")));
    }

    [Fact]
    public async Task Keeper_PassesOnRecordsOfOthers_TheyAreTakenAndNoted()
    {
        var (keeper, helper, other) = await PeopleAsync("passed");
        var theirs = helper.Entry(1, "passed");
        var unknown = keeper.Entry(2, "passed") with { Device = "an old phone", Author = "grandmother" };
        Assert.Equal("3 taken", await SendAsync(keeper, "passed", theirs, unknown, keeper.Entry(3, "passed")));
        var noted = (await keeper.ReadAsync("operations/passed/passed-on")).EnumerateArray().ToArray();
        Assert.Equal(new HashSet<Guid> { theirs.Id.Value, unknown.Id.Value }, noted.Select(line => line.GetProperty("entry").GetGuid()).ToHashSet());
        Assert.All(noted, line => Assert.Equal((keeper.Id, keeper.Device), (line.GetProperty("person").GetGuid(), line.GetProperty("device").GetString())));
        // Again does no harm.
        Assert.Equal("0 taken, 2 known", await SendAsync(keeper, "passed", theirs, unknown));
        Assert.Equal(2, (await keeper.ReadAsync("operations/passed/passed-on")).GetArrayLength());
        Assert.Equal(HttpStatusCode.Forbidden, (await other.GetAsync("operations/passed/passed-on")).StatusCode);
    }

    [Fact]
    public async Task Refused_AmongUnreadable_AreCountedByTheirPlace()
    {
        var (keeper, helper, _) = await PeopleAsync("mixed");
        var body = $"[7, {EntryJson.Write(helper.Entry(1, "mixed") with { Author = keeper.Name })}, {{}}, {EntryJson.Write(helper.Entry(2, "mixed"))}]";
        using var content = Site.Json(body);
        var answer = await (await helper.Http.PostAsync("operations/mixed/entries", content)).Content.ReadFromJsonAsync<JsonElement>();
        Assert.Equal([0, 1, 2], answer.GetProperty("refused").EnumerateArray().Select(line => line.GetProperty("index").GetInt32()));
        Assert.Equal(1, answer.GetProperty("accepted").GetInt32());
    }

    [Fact]
    public async Task Enrol_DeviceOfAnother_IsRefused()
    {
        var (keeper, helper, _) = await PeopleAsync("enrol");
        await Problem.IsAsync(HttpStatusCode.Conflict, "another person", await helper.PostAsync("account/devices", new { name = keeper.Device, label = "mine" }));
        // One that wrote in the book before there were accounts belongs to whoever keeps the book.
        Assert.Equal("1 taken", await SendAsync(keeper, "enrol", keeper.Entry(1, "enrol") with { Device = "from before" }));
        await Problem.IsAsync(HttpStatusCode.Conflict, "holds records written on this device", await helper.PostAsync("account/devices", new { name = "from before", label = "mine" }));
        Assert.Equal(HttpStatusCode.NoContent, (await keeper.PostAsync("account/devices", new { name = "from before", label = "mine" })).StatusCode);
    }

    [Fact]
    public async Task Device_TakenOffByTheKeeper_IsRefusedAndItsRecordsStay()
    {
        var (keeper, helper, _) = await PeopleAsync("lost");
        using var phone = helper.ByDeviceAlone();
        Assert.Equal("1 taken", await SendAsync(phone, "lost", helper.Entry(1, "lost")));
        var people = (await keeper.ReadAsync("operations/lost/people")).GetProperty("people").EnumerateArray().Single(line => line.GetProperty("id").GetGuid() == helper.Id);
        var device = people.GetProperty("devices")[0].GetProperty("id").GetGuid();
        Assert.Equal(HttpStatusCode.NoContent, (await keeper.DeleteAsync($"operations/lost/people/{helper.Id}/devices/{device}")).StatusCode);
        await Problem.IsAsync(HttpStatusCode.Unauthorized, "stays on it", await phone.SendAsync("lost", helper.Entry(2, "lost")));
        Assert.Single(await BookAsync("lost"));
        // Signed in again on the same phone, what was written meanwhile comes in as theirs.
        var again = site.Stranger();
        var answer = await again.PostAsync("account/sign-in", new { name = helper.Name, password = ClubSite.Password, device = new { name = helper.Device } });
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("1 taken", await SendAsync(again, "lost", helper.Entry(2, "lost")));
    }

    [Fact]
    public async Task Device_OfSomebodyWithAnotherOperation_IsNotTheKeepersToTakeOff()
    {
        var (keeper, helper, _) = await PeopleAsync("shared");
        await site.JoinAlsoAsync(helper, "theirs", Role.Keeper);
        var device = (await helper.ReadAsync("account/devices"))[0].GetProperty("id").GetGuid();
        await Problem.IsAsync(HttpStatusCode.Forbidden, "another operation", await keeper.DeleteAsync($"operations/shared/people/{helper.Id}/devices/{device}"));
        await Problem.IsAsync(HttpStatusCode.NotFound, "no member", await keeper.DeleteAsync($"operations/shared/people/{Guid.NewGuid()}/devices/{device}"));
    }

    [Fact]
    public async Task Sender_RightsTakenAwayWhileTheySend_NothingOfItIsKept()
    {
        var (keeper, helper, other) = await PeopleAsync("slow");
        using var phone = helper.ByDeviceAlone();
        var role = $"operations/slow/people/{helper.Id}";
        Assert.Equal(HttpStatusCode.OK, (await phone.SendSlowlyAsync("slow", () => Task.CompletedTask, helper.Entry(1, "slow"))).StatusCode);
        await Problem.IsAsync(HttpStatusCode.Forbidden, "reader", await phone.SendSlowlyAsync("slow", () => keeper.PutAsync(role, new { role = "reader" }), helper.Entry(2, "slow")));
        await keeper.PutAsync(role, new { role = "helper" });
        var device = (await helper.ReadAsync("account/devices"))[0].GetProperty("id").GetGuid();
        await Problem.IsAsync(HttpStatusCode.Unauthorized, "stays on it", await phone.SendSlowlyAsync("slow", () => keeper.DeleteAsync($"{role}/devices/{device}"), helper.Entry(3, "slow")));
        using var session = other.BySessionAlone();
        await Problem.IsAsync(
            HttpStatusCode.Unauthorized, "",
            await session.SendSlowlyAsync("slow", () => other.PostAsync("account/password", new { present = ClubSite.Password, @new = "other words in a row" }), other.Entry(4, "slow")));
        Assert.Single(await BookAsync("slow"));
    }

    [Fact]
    public async Task Device_KeeperMadeHelperWhileTheySend_IsEnrolledByWhatTheyAreThen()
    {
        var (keeper, helper, _) = await PeopleAsync("slow device");
        await keeper.PutAsync($"operations/slow device/people/{helper.Id}", new { role = "keeper" });
        Assert.Equal("1 taken", await SendAsync(keeper, "slow device", keeper.Entry(1, "slow device") with { Device = "nobody's yet" }));
        await Problem.IsAsync(
            HttpStatusCode.Conflict, "holds records written on this device",
            await helper.PostSlowlyAsync(
                "account/devices", () => keeper.PutAsync($"operations/slow device/people/{helper.Id}", new { role = "helper" }),
                JsonSerializer.SerializeToUtf8Bytes(new { name = "nobody's yet", label = "mine" })));
    }

    [Fact]
    public async Task LastKeeper_CannotBeRemovedOrDemoted()
    {
        var (keeper, helper, _) = await PeopleAsync("last");
        await Problem.IsAsync(HttpStatusCode.Conflict, "last keeper", await keeper.DeleteAsync($"operations/last/people/{keeper.Id}"));
        await Problem.IsAsync(HttpStatusCode.Conflict, "last keeper", await keeper.PutAsync($"operations/last/people/{keeper.Id}", new { role = "helper" }));
        await Problem.IsAsync(HttpStatusCode.BadRequest, "role", await keeper.PutAsync($"operations/last/people/{helper.Id}", new { role = "owner" }));
        Assert.Equal(HttpStatusCode.NoContent, (await keeper.PutAsync($"operations/last/people/{helper.Id}", new { role = "keeper" })).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await helper.DeleteAsync($"operations/last/people/{keeper.Id}")).StatusCode);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task KeeperNoMore_LeavesNoInvitationBehind(bool removed)
    {
        var operation = $"door {removed}";
        var (keeper, helper, _) = await PeopleAsync(operation);
        var path = $"operations/{operation}/people/{helper.Id}";
        Assert.Equal(HttpStatusCode.NoContent, (await keeper.PutAsync(path, new { role = "keeper" })).StatusCode);
        var made = await (await helper.PostAsync($"operations/{operation}/invitations", new { role = "keeper" })).Content.ReadFromJsonAsync<JsonElement>();
        var secret = new Uri(made.GetProperty("link").GetString()!).Fragment[1..];
        Assert.Equal(HttpStatusCode.OK, (await site.Stranger().PostAsync("account/link", new { secret })).StatusCode);
        var answer = removed ? await keeper.DeleteAsync(path) : await keeper.PutAsync(path, new { role = "reader" });
        Assert.Equal(HttpStatusCode.NoContent, answer.StatusCode);
        await Problem.IsAsync(HttpStatusCode.NotFound, "taken back", await site.Stranger().PostAsync("account/link", new { secret }));
    }

    private async Task<(Guest Keeper, Guest Helper, Guest Other)> PeopleAsync(string operation) => (
        await site.JoinAsync($"keeper of {operation}", operation, Role.Keeper),
        await site.JoinAsync($"helper of {operation}", operation, Role.Helper),
        await site.JoinAsync($"other of {operation}", operation, Role.Helper));

    private async Task<List<Entry>> BookAsync(string operation)
    {
        var all = new List<Entry>();
        await foreach (var entry in site.Server.Store.ReadAllAsync(operation))
            all.Add(entry);
        return all;
    }

    /// <summary>Sends entries and says what became of them: how many were taken and known, and which fields kept others out.</summary>
    private static async Task<string> SendAsync(Guest guest, string operation, params Entry[] entries)
    {
        var answer = await guest.SendAsync(operation, entries);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var result = await answer.Content.ReadFromJsonAsync<JsonElement>();
        var refused = result.GetProperty("refused").EnumerateArray().Select(line => $", {line.GetProperty("index").GetInt32()} {line.GetProperty("reason").GetString()!.Split(':')[0]}");
        var known = result.GetProperty("known").GetInt32();
        return $"{result.GetProperty("accepted").GetInt32()} taken{(known > 0 ? $", {known} known" : "")}{string.Concat(refused)}";
    }
}

public sealed class EntryGateTestsOnSqlite(ClubSite site) : EntryGateTests(site), IClassFixture<ClubSite>;

public sealed class EntryGateTestsOnPostgres(PostgresClubSite site) : EntryGateTests(site.Required()), IClassFixture<PostgresClubSite>;
