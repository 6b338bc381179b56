using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Foundress.Accounts;

namespace Foundress.Server.Tests.Accounts;

/// <summary>Passkeys, with a security key in software.</summary>
public abstract class PasskeyTests(ClubSite site)
{
    private string Origin => $"http://127.0.0.1:{site.Server.Address.Port}";

    [Fact]
    public async Task Passkey_Added_SignsInWithoutAName()
    {
        var anna = await site.JoinAsync("Anna", "home", Role.Helper);
        using var key = await AddAsync(anna);
        Assert.Equal("My phone", (await anna.ReadAsync("account/passkeys"))[0].GetProperty("label").GetString());
        for (var n = 0; n < 2; n++)
        {
            var phone = site.Stranger();
            var answer = await SignInAsync(phone, key);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            phone.Take(await answer.Content.ReadFromJsonAsync<JsonElement>());
            Assert.Equal((anna.Id, "Anna"), (phone.Id, phone.Name));
            Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("operations/home/entries")).StatusCode);
        }

        var log = await new SignInLog(site.Server.Accounts!).AllAsync();
        Assert.Equal(2, log.Count(line => line is { Name: "Anna", Way: SignInWay.Passkey, Result: SignInResult.Let }));
    }

    [Theory]
    [InlineData("another site's page")]
    [InlineData("another domain")]
    [InlineData("owner not made sure of")]
    [InlineData("unknown key")]
    [InlineData("removed key")]
    [InlineData("another's challenge")]
    [InlineData("answer given twice")]
    [InlineData("no challenge")]
    [InlineData("no credential")]
    public async Task Passkey_NotAsItMustBe_LetsNobodyIn(string how)
    {
        var owner = await site.JoinAsync("Owner with " + how, "home", Role.Keeper);
        using var key = await AddAsync(owner);
        using var strange = new SoftKey("localhost", Origin);
        var phone = site.Stranger();
        HttpResponseMessage answer;
        switch (how)
        {
            case "another site's page":
                key.Origin = "https://bees.example";
                answer = await SignInAsync(phone, key);
                break;
            case "another domain":
                key.Domain = "bees.example";
                answer = await SignInAsync(phone, key);
                break;
            case "owner not made sure of":
                key.Verifies = false;
                answer = await SignInAsync(phone, key);
                break;
            case "unknown key":
                answer = await SignInAsync(phone, strange);
                break;
            case "removed key":
                var id = (await owner.ReadAsync("account/passkeys"))[0].GetProperty("id").GetString();
                Assert.Equal(HttpStatusCode.NoContent, (await owner.DeleteAsync($"account/passkeys/{id}")).StatusCode);
                answer = await SignInAsync(phone, key);
                break;
            case "another's challenge":
                var elsewhere = await ChallengeAsync(site.Stranger());
                await ChallengeAsync(phone);
                answer = await phone.PostAsync("account/passkeys/sign-in", new { credential = key.Get(elsewhere) });
                break;
            case "answer given twice":
                var credential = key.Get(await ChallengeAsync(phone));
                Assert.Equal(HttpStatusCode.OK, (await phone.PostAsync("account/passkeys/sign-in", new { credential })).StatusCode);
                var later = site.Stranger();
                await ChallengeAsync(later);
                answer = await later.PostAsync("account/passkeys/sign-in", new { credential });
                break;
            case "no challenge":
                answer = await phone.PostAsync("account/passkeys/sign-in", new { credential = key.Get(await ChallengeAsync(site.Stranger())) });
                break;
            default:
                await ChallengeAsync(phone);
                answer = await phone.PostAsync("account/passkeys/sign-in", new { credential = "{\"id\":1}" });
                break;
        }

        await Problem.IsAsync(HttpStatusCode.Unauthorized, "passkey was not accepted", answer);
        if (how != "answer given twice")
            Assert.Equal(HttpStatusCode.Unauthorized, (await phone.GetAsync("account")).StatusCode);
    }

    [Fact]
    public async Task Passkey_OfAnotherSite_IsNotAdded()
    {
        var owner = await site.JoinAsync("Owner of a strange key", "home", Role.Keeper);
        using var key = new SoftKey("bees.example", Origin);
        var options = await (await owner.PostAsync("account/passkeys/options", new { })).Content.ReadFromJsonAsync<JsonElement>();
        await Problem.IsAsync(HttpStatusCode.BadRequest, "credential", await owner.PostAsync("account/passkeys", new { credential = key.Create(options) }));
        Assert.Equal(0, (await owner.ReadAsync("account/passkeys")).GetArrayLength());
    }

    private async Task<SoftKey> AddAsync(Guest guest)
    {
        var key = new SoftKey("localhost", Origin);
        await AddAsync(guest, key);
        return key;
    }

    /// <summary>Adds a key to somebody's account.</summary>
    internal static async Task AddAsync(Guest guest, SoftKey key)
    {
        var options = await (await guest.PostAsync("account/passkeys/options", new { })).Content.ReadFromJsonAsync<JsonElement>();
        Assert.Equal("localhost", options.GetProperty("rp").GetProperty("id").GetString());
        var answer = await guest.PostAsync("account/passkeys", new { credential = key.Create(options), label = "My phone" });
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
    }

    private static async Task<JsonElement> ChallengeAsync(Guest guest) =>
        await (await guest.PostAsync("account/passkeys/challenge", new { })).Content.ReadFromJsonAsync<JsonElement>();

    internal static async Task<HttpResponseMessage> SignInAsync(Guest guest, SoftKey key) =>
        await guest.PostAsync("account/passkeys/sign-in", new { credential = key.Get(await ChallengeAsync(guest)) });
}

public sealed class PasskeyTestsOnSqlite(ClubSite site) : PasskeyTests(site), IClassFixture<ClubSite>;

public sealed class PasskeyTestsOnPostgres(PostgresClubSite site) : PasskeyTests(site.Required()), IClassFixture<PostgresClubSite>;
