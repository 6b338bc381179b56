using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Foundress.Accounts;
using Foundress.Accounts.Model;
using Foundress.Server.Accounts;
using Foundress.Server.Problems;
using Foundress.Server.Security;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.Extensions.DependencyInjection;

namespace Foundress.Server.Tests.Accounts;

/// <summary>Coming in: passwords, links, waiting, and what is noted of it.</summary>
public abstract class EntranceTests(ClubSite site)
{
    [Fact]
    public async Task Join_ThenSignInElsewhere_IsTheSamePerson()
    {
        var anna = await site.JoinAsync("Anna", "home", Role.Helper);
        var laptop = site.Stranger();
        var answer = await laptop.PostAsync("account/sign-in", new { name = "  anna ", password = ClubSite.Password, device = new { name = "anna-laptop" } });
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        laptop.Take(await answer.Content.ReadFromJsonAsync<JsonElement>());
        Assert.Equal((anna.Id, "Anna", "anna-laptop"), (laptop.Id, laptop.Name, laptop.Device));
        var account = await laptop.ReadAsync("account");
        Assert.Equal("helper", account.GetProperty("operations")[0].GetProperty("role").GetString());
        Assert.True(account.GetProperty("signedIn").GetBoolean());
        Assert.Equal(2, (await laptop.ReadAsync("account/devices")).GetArrayLength());
    }

    [Fact]
    public async Task Cookies_Given_AreKeptFromScriptsAndOtherSites()
    {
        var guest = site.Stranger();
        var answer = await guest.PostAsync("account/join", new { secret = await site.LinkAsync("home", Role.Helper), name = "Cookie C", password = ClubSite.Password, device = new { name = "cookie-phone" } });
        var cookies = answer.Headers.GetValues("Set-Cookie").ToArray();
        Assert.Equal(2, cookies.Length);
        Assert.All(cookies, cookie =>
        {
            Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("path=/", cookie, StringComparison.OrdinalIgnoreCase);
        });
    }

    [Fact]
    public async Task SignIn_WhereAnOlderSessionIsDueForRenewal_IsTheOneThatStays()
    {
        var anna = await site.JoinAsync("Early Anna", "home", Role.Helper);
        var ben = await site.JoinAsync("Late Ben", "home", Role.Helper);
        site.Time.Advance(TimeSpan.FromHours(7));
        var answer = await anna.PostAsync("account/sign-in", new { name = ben.Name, password = ClubSite.Password });
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Single(answer.Headers.GetValues("Set-Cookie"), cookie => cookie.StartsWith("foundress=", StringComparison.Ordinal));
        Assert.Equal(ben.Name, (await anna.ReadAsync("account")).GetProperty("name").GetString());
    }

    [Theory]
    [InlineData("short", "at least 12")]
    [InlineData("aaaaaaaaaaaaaaaa", "same few characters")]
    [InlineData("Rules Of Words", "is your name")]
    [InlineData("", "at least 12")]
    public async Task Join_PasswordTooEasy_IsRefusedAndTheLinkStays(string password, string words)
    {
        var guest = site.Stranger();
        var secret = await site.LinkAsync("home", Role.Helper);
        await Problem.IsAsync(HttpStatusCode.BadRequest, words, await guest.PostAsync("account/join", new { secret, name = "Rules of words", password }));
        Assert.Equal(HttpStatusCode.OK, (await guest.PostAsync("account/link", new { secret })).StatusCode);
    }

    [Theory]
    [InlineData("", "no name")]
    [InlineData("\u202eAnna", "cannot be seen")]
    [InlineData("TAKEN  name", "called that already")]
    public async Task Join_NameThatCannotBe_IsRefusedAndTheLinkStays(string name, string words)
    {
        if (name.StartsWith("TAKEN", StringComparison.Ordinal))
            await site.JoinAsync("Taken Name", "home", Role.Reader);
        var guest = site.Stranger();
        var secret = await site.LinkAsync("home", Role.Helper);
        var answer = await guest.PostAsync("account/join", new { secret, name, password = ClubSite.Password });
        await Problem.IsAsync(words.StartsWith("called", StringComparison.Ordinal) ? HttpStatusCode.Conflict : HttpStatusCode.BadRequest, words, answer);
        Assert.Equal(HttpStatusCode.OK, (await guest.PostAsync("account/link", new { secret })).StatusCode);
    }

    [Fact]
    public async Task Link_UsedByTwoAtOnce_LetsOneIn()
    {
        var secret = await site.LinkAsync("race", Role.Helper);
        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(n =>
            site.Stranger().PostAsync("account/join", new { secret, name = $"Racer {n}", password = ClubSite.Password })));
        Assert.Single(answers, answer => answer.IsSuccessStatusCode);
        Assert.Equal(5, answers.Count(answer => answer.StatusCode == HttpStatusCode.Unauthorized));
        Assert.Single(await new Members(site.Server.Accounts!).OfAsync("race"));
        await using var context = site.Server.Accounts!.Open();
        Assert.Equal(1, await context.Users.CountAsync(person => person.NormalizedUserName!.StartsWith("RACER")));
    }

    [Fact]
    public async Task Link_UsedWithdrawnExpiredOrUnknown_LetsNobodyIn()
    {
        await using var club = new ClubHouse(site);
        var own = await club.OpenAsync();
        var keeper = await own.JoinAsync("Keeper", "home", Role.Keeper);
        async Task RefusedAsync(string secret, string words)
        {
            await Problem.IsAsync(HttpStatusCode.NotFound, words, await own.Stranger().PostAsync("account/link", new { secret }));
            await Problem.IsAsync(HttpStatusCode.Unauthorized, words, await own.Stranger().PostAsync("account/join", new { secret, name = "Late", password = ClubSite.Password }));
        }

        await RefusedAsync("nothing", "not known");
        var used = await own.LinkAsync("home", Role.Helper);
        Assert.Equal(HttpStatusCode.OK, (await own.Stranger().PostAsync("account/join", new { secret = used, name = "First", password = ClubSite.Password })).StatusCode);
        await RefusedAsync(used, "has been used");

        var made = await (await keeper.PostAsync("operations/home/invitations", new { role = "helper", forName = "Ben", days = 2 })).Content.ReadFromJsonAsync<JsonElement>();
        var link = new Uri(made.GetProperty("link").GetString()!);
        Assert.Equal("/account.html", link.AbsolutePath);
        var withdrawn = link.Fragment[1..];
        Assert.Equal(HttpStatusCode.OK, (await own.Stranger().PostAsync("account/link", new { secret = withdrawn })).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await keeper.DeleteAsync($"operations/home/invitations/{made.GetProperty("id").GetGuid()}")).StatusCode);
        await RefusedAsync(withdrawn, "taken back");

        var old = await own.LinkAsync("home", Role.Helper, lasts: TimeSpan.FromHours(1));
        own.Time.Advance(TimeSpan.FromHours(2));
        await RefusedAsync(old, "run out");
        Assert.Equal(["First", "Keeper"], (await new Members(own.Server.Accounts!).OfAsync("home")).Select(member => member.Name));
    }

    // Whoever is signed in joins another operation as who they are, and the link's role holds there only.
    [Fact]
    public async Task Link_OpenedBySomebodySignedIn_AddsAMembership()
    {
        var carl = await site.JoinAsync("Carl", "first", Role.Keeper);
        await site.JoinAlsoAsync(carl, "second", Role.Reader);
        var roles = (await carl.ReadAsync("account")).GetProperty("operations").EnumerateArray()
            .Select(line => (line.GetProperty("operation").GetString(), line.GetProperty("role").GetString()));
        Assert.Equal([("first", "keeper"), ("second", "reader")], roles);
        Assert.Equal(HttpStatusCode.Forbidden, (await carl.SendAsync("second", carl.Entry(1, "second"))).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await carl.GetAsync("operations/second/entries")).StatusCode);
    }

    [Fact]
    public async Task Link_ForANewPassword_EndsEverythingThatWasThere()
    {
        var dora = await site.JoinAsync("Dora", "home", Role.Helper);
        using var phone = dora.ByDeviceAlone();
        var link = await site.Links.MakeAsync(new LinkOffer(null, Role.Reader, "", LinkOffer.Usual, Person: dora.Id), null);
        var answer = await site.Stranger().PostAsync("account/join", new { secret = link.Secret, password = "another four words" });
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await phone.GetAsync("account")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await dora.GetAsync("account")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await site.Stranger().PostAsync("account/sign-in", new { name = "Dora", password = ClubSite.Password })).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await site.Stranger().PostAsync("account/sign-in", new { name = "Dora", password = "another four words" })).StatusCode);
    }

    [Fact]
    public async Task SignIn_FiveWrongPasswords_MakeTheAccountWaitButNotItsDevices()
    {
        var emil = await site.JoinAsync("Emil", "home", Role.Helper);
        using var phone = emil.ByDeviceAlone();
        var texts = new HashSet<string>();
        async Task WrongAsync(string name, string password)
        {
            var answer = await site.Stranger().PostAsync("account/sign-in", new { name, password });
            Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
            texts.Add((await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("detail").GetString()!);
        }

        for (var n = 0; n < 5; n++)
            await WrongAsync("Emil", "not the password");
        await WrongAsync("Emil", ClubSite.Password);
        await WrongAsync("Nobody at all", ClubSite.Password);
        await WrongAsync("Emil", new string('x', 5_000));
        // Nobody can tell a wrong name from a wrong password from an account that waits.
        Assert.Single(texts);
        Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("operations/home/entries")).StatusCode);
    }

    // By what is done, not by the time it takes: one slow hash for each try, whether there is such a name or not.
    [Theory]
    [InlineData("nobody of that name")]
    [InlineData("wrong password")]
    [InlineData("waiting")]
    [InlineData("closed")]
    [InlineData("too long")]
    public async Task SignIn_Refused_ComparesOnePasswordWhateverTheReason(string why)
    {
        var name = "Slow " + why;
        if (why != "nobody of that name")
            await site.JoinAsync(name, "home", Role.Helper);
        if (why == "closed")
            await new Registry(site.Server.Accounts!).CloseAsync(name);
        for (var n = 0; why == "waiting" && n < 5; n++)
            await site.Stranger().PostAsync("account/sign-in", new { name, password = "not the password" });
        await using var scope = site.Server.Services.CreateAsyncScope();
        var counted = new CountedHasher();
        scope.ServiceProvider.GetRequiredService<UserManager<Person>>().PasswordHasher = counted;
        var http = new DefaultHttpContext { RequestServices = scope.ServiceProvider };
        var form = new SignInForm(name, why == "too long" ? new string('x', 5_000) : "not the password");
        var refused = await Assert.ThrowsAsync<RequestProblemException>(() => scope.ServiceProvider.GetRequiredService<Entrance>().WithPasswordAsync(http, form));
        Assert.Equal((401, 1), (refused.Status, counted.Compared));
        Assert.InRange(counted.Longest, 1, 200);
    }

    private sealed class CountedHasher : PasswordHasher<Person>
    {
        public int Compared { get; private set; }

        public int Longest { get; private set; }

        public override PasswordVerificationResult VerifyHashedPassword(Person user, string hashedPassword, string providedPassword)
        {
            (Compared, Longest) = (Compared + 1, Math.Max(Longest, providedPassword.Length));
            return base.VerifyHashedPassword(user, hashedPassword, providedPassword);
        }
    }

    [Fact]
    public async Task SignIns_OfLongAgo_AreForgottenWhileTheServerRuns()
    {
        await using var club = new ClubHouse(site);
        var own = await club.OpenAsync();
        await own.JoinAsync("Keeper", "home", Role.Keeper);
        var log = new SignInLog(own.Server.Accounts!);
        Assert.Single(await log.AllAsync());
        own.Time.Advance(SignInLog.Kept - TimeSpan.FromDays(1));
        Assert.Single(await log.AllAsync());
        // A day at a time, until the duty of one of them is done.
        for (var n = 0; n < 500 && (await log.AllAsync()).Count > 0; n++)
        {
            own.Time.Advance(SignInDuty.Every);
            await Task.Delay(10);
        }

        Assert.Empty(await log.AllAsync());
    }

    [Fact]
    public async Task SignIns_Noted_AreShownToKeepersWithTheNetworkOnly()
    {
        var keeper = await site.JoinAsync("Keeper N", "noted", Role.Keeper);
        await site.JoinAsync("Stranger N", "elsewhere", Role.Helper);
        await site.Stranger().PostAsync("account/sign-in", new { name = "Keeper N", password = "wrong wrong wrong" });
        await site.Stranger().PostAsync("account/sign-in", new { name = "Keeper N", password = ClubSite.Password });
        await site.Stranger().PostAsync("account/sign-in", new { name = "my secret password", password = "typed into the wrong field" });
        var text = (await keeper.ReadAsync("operations/noted/sign-ins")).EnumerateArray()
            .Select(line => string.Join(' ', line.GetProperty("name").GetString(), line.GetProperty("way").GetString(), line.GetProperty("result").GetString(), line.GetProperty("network").GetString()));
        Assert.Equal(["Keeper N password let 127.0.0.0/24", "Keeper N password wrong 127.0.0.0/24", "Keeper N link let 127.0.0.0/24"], text);
        var administrator = await site.JoinAsync("Administrator N", "elsewhere", Role.Reader, administrator: true);
        var all = (await administrator.ReadAsync("sign-ins")).EnumerateArray().ToArray();
        Assert.Contains(all, line => line.GetProperty("name").ValueKind == JsonValueKind.Null && line.GetProperty("result").GetString() == "unknown");
        Assert.DoesNotContain(all, line => line.GetRawText().Contains("secret", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("203.0.113.77", "203.0.113.0/24")]
    [InlineData("::ffff:203.0.113.77", "203.0.113.0/24")]
    [InlineData("2001:db8:1:2:3:4:5:6", "2001:db8:1::/48")]
    public void Network_OfAnAddress_IsShortened(string address, string network) =>
        Assert.Equal(network, SignInLog.Network(IPAddress.Parse(address)));

    [Fact]
    public async Task Entrance_KnockedAtTooOften_SaysWhenToComeBack()
    {
        await using var club = new ClubHouse(site, new RateLimits(EntrancePerFiveMinutes: 4));
        var own = await club.OpenAsync();
        var keeper = await own.JoinAsync("Keeper", "home", Role.Keeper);
        HttpResponseMessage answer;
        var tries = 0;
        do
        {
            answer = await own.Stranger().PostAsync("account/sign-in", new { name = "Keeper", password = "wrong wrong wrong" });
            tries++;
        }
        while (answer.StatusCode == HttpStatusCode.Unauthorized && tries < 10);
        await Problem.IsAsync(HttpStatusCode.TooManyRequests, "Try again in", answer);
        Assert.InRange(answer.Headers.RetryAfter!.Delta!.Value.TotalSeconds, 1, 300);
        Assert.Equal(4, tries);
        // What is not the entrance goes on.
        Assert.Equal(HttpStatusCode.OK, (await keeper.GetAsync("operations/home/entries")).StatusCode);
    }

    [Fact]
    public async Task Exchange_AskedTooOften_IsLimitedByPerson()
    {
        await using var club = new ClubHouse(site, new RateLimits(ExchangePerMinute: 3));
        var own = await club.OpenAsync();
        var one = await own.JoinAsync("One", "home", Role.Helper);
        var two = await own.JoinAsync("Two", "home", Role.Helper);
        for (var n = 0; n < 3; n++)
            Assert.Equal(HttpStatusCode.OK, (await one.GetAsync("operations/home/entries")).StatusCode);
        await Problem.IsAsync(HttpStatusCode.TooManyRequests, "nothing recorded is lost", await one.GetAsync("operations/home/entries"));
        Assert.Equal(HttpStatusCode.OK, (await two.GetAsync("operations/home/entries")).StatusCode);
    }

    [Fact]
    public async Task Restart_OfTheServer_SignsNobodyOut()
    {
        await using var club = new ClubHouse(site);
        var own = await club.OpenAsync();
        var keeper = await own.JoinAsync("Keeper", "home", Role.Keeper);
        await own.RestartAsync();
        using var again = keeper.MovedTo(own.Server.Address);
        Assert.Equal(HttpStatusCode.OK, (await again.GetAsync("operations/home/people")).StatusCode);
    }

    [Theory]
    [InlineData("account/sign-in", """{"name":"x"}""", "password")]
    [InlineData("account/sign-in", """{"name":null,"password":"x"}""", "name")]
    [InlineData("account/sign-in", """{"name":7,"password":"x"}""", "name")]
    [InlineData("account/sign-in", "[]", "not what is expected")]
    [InlineData("account/sign-in", "null", "JSON object")]
    [InlineData("account/join", "{", "not what is expected")]
    public async Task Form_ThatIsNone_IsNamed(string path, string body, string words)
    {
        using var content = Site.Json(body);
        await Problem.IsAsync(HttpStatusCode.BadRequest, words, await site.Stranger().Http.PostAsync(path, content));
    }

    [Fact]
    public void Accounts_File_IsItsOwnersAlone()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows keeps files of a user's folder to the user by itself.");
        Assert.Equal(site.OnPostgres, site.Server.Accounts!.File is null);
        if (!OperatingSystem.IsWindows() && site.Server.Accounts.File is { } file)
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
    }

    [Fact]
    public async Task Accounts_OfAnOlderVersion_AreKeptAsTheyWereBeforeTheUpdate()
    {
        using var folder = new Running.TempData();
        var file = folder[AccountsDatabase.FileName];
        await using (var older = Foundress.Accounts.Sqlite.SqliteAccountsFile.Context(file))
            await older.GetService<Microsoft.EntityFrameworkCore.Migrations.IMigrator>().MigrateAsync("Initial");
        using (await AccountsDatabase.OpenAsync(folder.Path, site.Time))
        {
        }

        // Once is enough.
        using (await AccountsDatabase.OpenAsync(folder.Path, site.Time))
        {
        }

        await using var kept = Foundress.Accounts.Sqlite.SqliteAccountsFile.Context(Assert.Single(Directory.GetFiles(folder["backups"])));
        Assert.Equal("Initial", Assert.Single(await kept.Database.GetAppliedMigrationsAsync()).Split('_')[1]);
    }

    [Fact]
    public async Task Model_AndMigrations_AreTheSame()
    {
        await using AccountsContext context = site.Server.Accounts!.Open();
        Assert.False(context.Database.HasPendingModelChanges());
    }
}

public sealed class EntranceTestsOnSqlite(ClubSite site) : EntranceTests(site), IClassFixture<ClubSite>;

public sealed class EntranceTestsOnPostgres(PostgresClubSite site) : EntranceTests(site.Required()), IClassFixture<PostgresClubSite>;
