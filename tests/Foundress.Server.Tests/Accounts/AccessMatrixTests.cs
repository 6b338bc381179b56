using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Foundress.Accounts;
using Foundress.Server.Security;

namespace Foundress.Server.Tests.Accounts;

/// <summary>Every address × everybody × their own operation and another: asked of the real server and held against docs/access.md.</summary>
public abstract class AccessMatrixTests(ClubSite site)
{
    private const string Yes = "yes";
    private const string No = "no";
    private const string SignIn = "sign in";
    private const string Lead = "| request |";

    // What each kind of access means, said once more and apart from the code that decides.
    private static readonly Dictionary<Access, string[]> Meaning = new()
    {
        //                     nobody  reader helper keeper stranger administrator
        [Access.Public] = [Yes, Yes, Yes, Yes, Yes, Yes],
        [Access.Known] = [SignIn, Yes, Yes, Yes, Yes, Yes],
        [Access.SignedIn] = [SignIn, Yes, Yes, Yes, Yes, Yes],
        [Access.Read] = [SignIn, Yes, Yes, Yes, No, No],
        [Access.Write] = [SignIn, No, Yes, Yes, No, No],
        [Access.Manage] = [SignIn, No, No, Yes, No, No],
        [Access.Administer] = [SignIn, No, No, No, No, Yes],
    };

    private static readonly string[] ByCalendarLink = ["GET /calendar.ics", "GET /api/v1/operations/{operation}/calendar.ics"];

    private static readonly Access[] ByDeviceToo = [Access.Public, Access.Known, Access.Read, Access.Write];

    [Fact]
    public void Endpoints_All_HaveARule()
    {
        var without = site.Server.Endpoints.Where(endpoint => AccessRules.Of(endpoint) is null).Select(endpoint => endpoint.DisplayName);
        Assert.Empty(without);
        var answered = site.Server.Endpoints.Select(endpoint => AccessRules.Of(endpoint)!.Key).ToHashSet();
        Assert.Empty(AccessRules.All.Where(rule => !answered.Contains(rule.Key)).Select(rule => rule.Key));
    }

    [Fact]
    public async Task Matrix_AskedOfTheServer_IsAsItIsPrinted()
    {
        var people = new[]
        {
            site.Stranger(), await site.JoinAsync("Reader R", "home", Role.Reader), await site.JoinAsync("Helper H", "home", Role.Helper),
            await site.JoinAsync("Keeper K", "home", Role.Keeper), await site.JoinAsync("Stranger S", "away", Role.Keeper),
            await AdministratorAsync(),
        };
        var printed = new StringBuilder();
        foreach (var rule in AccessRules.All.OrderBy(rule => rule.Pattern.EndsWith("/sign-out", StringComparison.Ordinal)))
        {
            var signedIn = new List<string>();
            foreach (var person in people)
                signedIn.Add(await AskAsync(person, rule, "home"));
            Assert.True(Meaning[rule.Access].SequenceEqual(signedIn), $"{rule.Key} is {rule.Access} and answers {string.Join(", ", signedIn)}.");
            printed.Append($"| `{rule.Key}` | {string.Join(" | ", signedIn)} | {(ByDeviceToo.Contains(rule.Access) ? Yes : SignIn)} | {(rule.Access == Access.Public || ByCalendarLink.Contains(rule.Key) ? Yes : SignIn)} |\n");
        }

        var document = await File.ReadAllTextAsync(Path.Combine(Repository.Root, "docs", "access.md"));
        var table = document[document.IndexOf(Lead, StringComparison.Ordinal)..].Split("\n\n")[0];
        var rows = string.Concat(table.TrimEnd('\n').Split('\n').Skip(2).Select(row => row + "\n"));
        Assert.Equal(printed.ToString(), rows);
    }

    [Fact]
    public async Task Matrix_ByDeviceAlone_OnlyExchanges()
    {
        Guest[] people = [await site.JoinAsync("Reader D", "home", Role.Reader), await site.JoinAsync("Helper D", "home", Role.Helper), await site.JoinAsync("Keeper D", "home", Role.Keeper)];
        foreach (var rule in AccessRules.All.Where(rule => !rule.Pattern.EndsWith("/sign-out", StringComparison.Ordinal)))
        {
            for (var n = 0; n < people.Length; n++)
            {
                using var phone = people[n].ByDeviceAlone();
                var expected = ByDeviceToo.Contains(rule.Access) ? Meaning[rule.Access][n + 1] : SignIn;
                Assert.Equal((rule.Key, expected), (rule.Key, await AskAsync(phone, rule, "home")));
                Assert.Equal((rule.Key, expected), (rule.Key, await AskAsync(site.Stranger(), rule, "home", bearer: people[n].Secret)));
            }
        }
    }

    [Fact]
    public async Task Matrix_ByCalendarLinkAlone_ReadsCalendarsOnly()
    {
        Guest[] people = [await site.JoinAsync("Reader C", "home", Role.Reader), await site.JoinAsync("Keeper C", "home", Role.Keeper), await site.JoinAsync("Administrator C", "away", Role.Keeper, administrator: true)];
        for (var n = 0; n < people.Length; n++)
        {
            var key = await CalendarLinkTests.MakeAsync(people[n]);
            foreach (var rule in AccessRules.All)
            {
                var expected = !ByCalendarLink.Contains(rule.Key) ? Meaning[rule.Access][0] : n < 2 ? Yes : No;
                Assert.Equal((rule.Key, expected), (rule.Key, await AskAsync(site.Stranger(), rule, "home", key: key)));
                // Nor is it a device's secret.
                Assert.Equal((rule.Key, Meaning[rule.Access][0]), (rule.Key, await AskAsync(site.Stranger(), rule, "home", bearer: key)));
            }
        }
    }

    // Whoever somebody is at home, in an operation of others they are strangers, whether it is there or not.
    [Theory]
    [InlineData("away")]
    [InlineData("nowhere")]
    [InlineData("Home")]
    [InlineData("home ")]
    public async Task Matrix_OfAnotherOperation_IsThatOfAStranger(string operation)
    {
        await site.JoinAsync($"Keeper of {operation}.", "away", Role.Keeper);
        Guest[] people = [await site.JoinAsync($"Reader to {operation}.", "home", Role.Reader), await site.JoinAsync($"Helper to {operation}.", "home", Role.Helper), await site.JoinAsync($"Keeper to {operation}.", "home", Role.Keeper)];
        foreach (var rule in AccessRules.All.Where(rule => rule.Pattern.Contains("{operation}", StringComparison.Ordinal)))
        {
            foreach (var person in people)
            {
                Assert.Equal((rule.Key, No), (rule.Key, await AskAsync(person, rule, operation)));
                using var phone = person.ByDeviceAlone();
                Assert.NotEqual((rule.Key, Yes), (rule.Key, await AskAsync(phone, rule, operation)));
            }
        }
    }

    // Every way of no longer being known is as good as never having been.
    [Theory]
    [InlineData("made up")]
    [InlineData("revoked")]
    [InlineData("idle")]
    [InlineData("expired")]
    [InlineData("password changed")]
    [InlineData("signed out")]
    public async Task Matrix_WhoeverIsNoLongerKnown_IsNobody(string how)
    {
        await using var own = new ClubHouse(site);
        var club = await own.OpenAsync();
        var keeper = await club.JoinAsync("Keeper", "home", Role.Keeper);
        using var phone = keeper.ByDeviceAlone();
        using var session = keeper.BySessionAlone();
        Assert.Equal(Yes, await AskAsync(phone, Rule("GET /api/v1/operations/{operation}/entries"), "home"));
        Assert.Equal(Yes, await AskAsync(session, Rule("GET /api/v1/operations/{operation}/people"), "home"));
        Guest[] gone;
        switch (how)
        {
            case "made up":
                gone = [club.Stranger()];
                gone[0].Http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", Secrets.New());
                break;
            case "revoked":
                var device = (await keeper.ReadAsync("account/devices"))[0].GetProperty("id").GetGuid();
                Assert.Equal(HttpStatusCode.NoContent, (await keeper.DeleteAsync($"account/devices/{device}")).StatusCode);
                // Its own sign-in ends with it: whoever finds the phone must not go on as its owner.
                gone = [phone, session];
                break;
            case "idle":
                club.Time.Advance(Devices.Idle + TimeSpan.FromMinutes(1));
                gone = [phone, session, keeper];
                break;
            case "expired":
                club.Time.Advance(TimeSpan.FromHours(13));
                gone = [session];
                break;
            case "password changed":
                Assert.Equal(HttpStatusCode.NoContent, (await keeper.PostAsync("account/password", new { present = ClubSite.Password, @new = "four other words here" })).StatusCode);
                Assert.Equal(Yes, await AskAsync(keeper, Rule("GET /api/v1/operations/{operation}/people"), "home"));
                gone = [session];
                break;
            default:
                Assert.Equal(HttpStatusCode.NoContent, (await keeper.PostAsync("account/sign-out", new { })).StatusCode);
                Assert.False(keeper.HasSession);
                gone = [phone, keeper];
                break;
        }

        foreach (var rule in AccessRules.All)
        {
            foreach (var guest in gone)
                Assert.Equal((rule.Key, Meaning[rule.Access][0]), (rule.Key, await AskAsync(guest, rule, "home", club: club)));
        }
    }

    [Fact]
    public async Task RoleTakenAway_IsGoneAtOnce()
    {
        var keeper = await site.JoinAsync("Keeper T", "taken", Role.Keeper);
        var helper = await site.JoinAsync("Helper T", "taken", Role.Helper);
        using var phone = helper.ByDeviceAlone();
        var write = Rule("POST /api/v1/operations/{operation}/entries");
        var read = Rule("GET /api/v1/operations/{operation}/entries");
        Assert.Equal(Yes, await AskAsync(phone, write, "taken"));
        Assert.Equal(HttpStatusCode.NoContent, (await keeper.PutAsync($"operations/taken/people/{helper.Id}", new { role = "reader" })).StatusCode);
        Assert.Equal((No, Yes), (await AskAsync(phone, write, "taken"), await AskAsync(phone, read, "taken")));
        Assert.Equal(HttpStatusCode.NoContent, (await keeper.DeleteAsync($"operations/taken/people/{helper.Id}")).StatusCode);
        Assert.Equal((No, No), (await AskAsync(phone, read, "taken"), await AskAsync(helper, read, "taken")));
    }

    private static AccessRule Rule(string key) => AccessRules.All.Single(rule => rule.Key == key);

    private async Task<Guest> AdministratorAsync()
    {
        var guest = await site.JoinAsync("Administrator A", "elsewhere", Role.Reader, administrator: true);
        return guest;
    }

    private async Task<string> AskAsync(Guest guest, AccessRule rule, string operation, string? bearer = null, ClubSite? club = null, string? key = null)
    {
        var path = rule.Pattern
            .Replace("{operation}", Uri.EscapeDataString(operation), StringComparison.Ordinal)
            .Replace("{*path:nonfile}", "settings", StringComparison.Ordinal).Replace("{**path}", "v9/nothing", StringComparison.Ordinal)
            .Replace("{passkey}", "AAAA", StringComparison.Ordinal);
        foreach (var name in new[] { "device", "apiary", "person", "invitation" })
            path = path.Replace($"{{{name}:guid}}", Guid.NewGuid().ToString(), StringComparison.Ordinal);
        if (key is not null)
            path += "?key=" + key;
        using var request = new HttpRequestMessage(rule.Method == "*" ? HttpMethod.Get : new HttpMethod(rule.Method), new Uri((club ?? site).Server.Address, path.TrimStart('/')).PathAndQuery);
        if (rule.Method is "POST" or "PUT")
            request.Content = JsonContent.Create<object>(rule.Pattern.EndsWith("/entries", StringComparison.Ordinal) ? Array.Empty<int>() : new { });
        if (bearer is not null)
            request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", bearer);
        using var answer = await guest.Http.SendAsync(request);
        Assert.True((int)answer.StatusCode < 500, $"{rule.Key}: {answer.StatusCode}");
        if (answer.StatusCode == HttpStatusCode.Unauthorized)
            return SignIn;
        if (answer.StatusCode != HttpStatusCode.Forbidden)
            return Yes;
        // The book itself refuses to remove what a keeper recorded, to whoever may ask.
        var detail = (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("detail").GetString()!;
        return detail.StartsWith("Only the invented records", StringComparison.Ordinal) ? Yes : No;
    }
}

public sealed class AccessMatrixTestsOnSqlite(ClubSite site) : AccessMatrixTests(site), IClassFixture<ClubSite>;

public sealed class AccessMatrixTestsOnPostgres(PostgresClubSite site) : AccessMatrixTests(site.Required()), IClassFixture<PostgresClubSite>;
