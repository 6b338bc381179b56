using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Foundress.Accounts;
using Foundress.Accounts.Model;
using Foundress.Book.Demo;
using Foundress.Knowledge;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace Foundress.Server.Tests.Accounts;

/// <summary>Secret addresses for calendar programs.</summary>
public abstract class CalendarLinkTests(ClubSite site)
{
    [Fact]
    public async Task Addresses_Made_ReadWhatIsDueInEachBookAndNothingElse()
    {
        var anna = await site.JoinAsync("Anna", "home", Role.Reader);
        await site.JoinAlsoAsync(anna, "north side", Role.Keeper);
        await site.Server.Store.AppendAsync("home", [.. DemoBook.Entries(KnowledgeBase.Load(), DemoBook.DefaultSeed, DateOnly.FromDateTime(site.Time.GetLocalNow().DateTime)).Select(entry => entry with { Operation = "home" })]);
        Assert.Equal(JsonValueKind.Null, (await anna.ReadAsync("account/calendar")).GetProperty("link").ValueKind);
        var answer = await anna.PostAsync("account/calendar", new { });
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        var addresses = (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("calendars").EnumerateArray()
            .ToDictionary(line => line.GetProperty("operation").GetString()!, line => new Uri(line.GetProperty("address").GetString()!), StringComparer.Ordinal);
        Assert.Equal(["home", "north side"], addresses.Keys.Order());
        Assert.Equal("/calendar.ics", addresses["home"].AbsolutePath);
        // A program that sends no cookies, no origin and no header.
        using var program = new HttpClient();
        Assert.Contains("BEGIN:VEVENT", await program.GetStringAsync(addresses["home"]), StringComparison.Ordinal);
        Assert.DoesNotContain("BEGIN:VEVENT", await program.GetStringAsync(addresses["north side"]), StringComparison.Ordinal);
        // What lies on the disk opens nothing.
        var key = addresses["home"].Query["?key=".Length..];
        await using var context = site.Server.Accounts!.Open();
        var kept = await context.Set<CalendarLink>().SingleAsync(link => link.PersonId == anna.Id);
        Assert.DoesNotContain(key, kept.Hash, StringComparison.Ordinal);
        Assert.NotEqual(JsonValueKind.Null, (await anna.ReadAsync("account/calendar")).GetProperty("link").GetProperty("seen").ValueKind);
    }

    [Fact]
    public async Task Address_MadeAnewOrTakenOff_IsNobodys()
    {
        var ben = await site.JoinAsync("Ben", "off", Role.Helper);
        var keeper = await site.JoinAsync("Keeper O", "off", Role.Keeper);
        var first = await MakeAsync(ben);
        Assert.Equal(HttpStatusCode.OK, await ReadAsync(first));
        var second = await MakeAsync(ben);
        Assert.Equal((HttpStatusCode.Unauthorized, HttpStatusCode.OK), (await ReadAsync(first), await ReadAsync(second)));
        await Problem.IsAsync(HttpStatusCode.Unauthorized, "People and devices", await site.Stranger().GetAsync("operations/off/calendar.ics?key=" + first));
        Assert.Equal(HttpStatusCode.NoContent, (await ben.DeleteAsync("account/calendar")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, await ReadAsync(second));
        await Problem.IsAsync(HttpStatusCode.NotFound, "calendar address", await ben.DeleteAsync("account/calendar"));

        // A keeper sees that there is one and takes it off; one of another operation cannot.
        var third = await MakeAsync(ben);
        var line = (await keeper.ReadAsync("operations/off/people")).GetProperty("people").EnumerateArray().Single(one => one.GetProperty("id").GetGuid() == ben.Id);
        Assert.Equal(JsonValueKind.Null, line.GetProperty("calendar").GetProperty("seen").ValueKind);
        var stranger = await site.JoinAsync("Keeper of others", "others", Role.Keeper);
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.DeleteAsync($"operations/others/people/{ben.Id}/calendar")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, await ReadAsync(third));
        Assert.Equal(HttpStatusCode.NoContent, (await keeper.DeleteAsync($"operations/off/people/{ben.Id}/calendar")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, await ReadAsync(third));
    }

    [Theory]
    [InlineData("removed from the operation", HttpStatusCode.Forbidden)]
    [InlineData("new password by a link", HttpStatusCode.Unauthorized)]
    [InlineData("account closed", HttpStatusCode.Unauthorized)]
    [InlineData("not read for a year", HttpStatusCode.Unauthorized)]
    public async Task Address_OfSomebodyWho_ReadsNoMore(string how, HttpStatusCode then)
    {
        await using var club = new ClubHouse(site);
        var own = await club.OpenAsync();
        var keeper = await own.JoinAsync("Keeper", "off", Role.Keeper);
        var cora = await own.JoinAsync("Cora", "off", Role.Reader);
        var key = await MakeAsync(cora);
        Assert.Equal(HttpStatusCode.OK, await ReadAsync(key, own));
        switch (how)
        {
            case "removed from the operation":
                Assert.Equal(HttpStatusCode.NoContent, (await keeper.DeleteAsync($"operations/off/people/{cora.Id}")).StatusCode);
                break;
            case "new password by a link":
                var link = await own.Links.MakeAsync(new LinkOffer(null, Role.Reader, "", LinkOffer.Usual, Person: cora.Id), null);
                Assert.Equal(HttpStatusCode.OK, (await own.Stranger().PostAsync("account/join", new { secret = link.Secret, password = "another four words" })).StatusCode);
                break;
            case "account closed":
                await new Registry(own.Server.Accounts!).CloseAsync("Cora");
                break;
            default:
                own.Time.Advance(Devices.Idle + TimeSpan.FromMinutes(1));
                break;
        }

        Assert.Equal(then, await ReadAsync(key, own));
    }

    [Fact]
    public async Task Log_OfACalendar_SaysWhenItWasMadeAndFromWhereItWasFirstRead()
    {
        await using var club = new ClubHouse(site);
        var own = await club.OpenAsync();
        var dora = await own.JoinAsync("Dora", "off", Role.Keeper);
        var key = await MakeAsync(dora);
        for (var n = 0; n < 3; n++)
        {
            Assert.Equal(HttpStatusCode.OK, await ReadAsync(key, own));
            own.Time.Advance(TimeSpan.FromHours(2));
        }

        // Once more after a month from the same network.
        own.Time.Advance(TimeSpan.FromDays(31));
        Assert.Equal(HttpStatusCode.OK, await ReadAsync(key, own));
        await own.Server.Services.GetRequiredService<CalendarLinks>().RevokeAsync(dora.Id);
        var lines = (await new SignInLog(own.Server.Accounts!).AllAsync()).Where(line => line.Way == SignInWay.Calendar).Select(line => (line.Name, line.Result, line.Network));
        Assert.Equal([("Dora", SignInResult.Let, "127.0.0.0/24"), ("Dora", SignInResult.Let, "127.0.0.0/24"), ("Dora", SignInResult.Made, "127.0.0.0/24")], lines);
    }

    /// <summary>Makes somebody's calendar addresses and says the secret in them.</summary>
    internal static async Task<string> MakeAsync(Guest guest)
    {
        var answer = await guest.PostAsync("account/calendar", new { });
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        return new Uri((await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("calendars")[0].GetProperty("address").GetString()!).Query["?key=".Length..];
    }

    private async Task<HttpStatusCode> ReadAsync(string key, ClubSite? club = null)
    {
        using var answer = await (club ?? site).Stranger().GetAsync("operations/off/calendar.ics?key=" + key);
        return answer.StatusCode;
    }
}

public sealed class CalendarLinkTestsOnSqlite(ClubSite site) : CalendarLinkTests(site), IClassFixture<ClubSite>;

public sealed class CalendarLinkTestsOnPostgres(PostgresClubSite site) : CalendarLinkTests(site.Required()), IClassFixture<PostgresClubSite>;
