using System.Net;
using System.Text.Json;
using Foundress.Accounts;
using Foundress.Server.Security;

namespace Foundress.Server.Tests.Accounts;

/// <summary>Whoever is refused reads why in their own language, wherever on its way the request was stopped.</summary>
public sealed class RefusalLanguageTests : IAsyncLifetime
{
    private readonly ClubSite _site = new(onPostgres: false, new RateLimits(EntrancePerFiveMinutes: 8, ExchangePerMinute: 3));

    public ValueTask InitializeAsync() => _site.InitializeAsync();

    public ValueTask DisposeAsync() => _site.DisposeAsync();

    [Fact]
    public async Task SignIn_NotKnown_IsAskedForInTheCallersLanguage()
    {
        await AssertAsync(HttpStatusCode.Unauthorized, "Sign in. Everything recorded on this device", await Speaking("en").GetAsync("account"));
        await AssertAsync(HttpStatusCode.Unauthorized, "Melden Sie sich an. Alles, was auf diesem Gerät", await Speaking("de-CH, de;q=0.9").GetAsync("account"));
        await AssertAsync(HttpStatusCode.Unauthorized, "Sign in. Everything recorded on this device", await Speaking("fr").GetAsync("account"));
    }

    [Fact]
    public async Task SignIn_WrongPassword_IsRefusedInTheCallersLanguage()
    {
        await _site.JoinAsync("Anna", "home", Role.Keeper);
        var form = new { name = "Anna", password = "not the right one" };
        await AssertAsync(HttpStatusCode.Unauthorized, "Der Name oder das Passwort stimmt nicht.", await Speaking("de").PostAsync("account/sign-in", form));
        await AssertAsync(HttpStatusCode.Unauthorized, "The name or the password is not right.", await Speaking("en").PostAsync("account/sign-in", form));
    }

    [Fact]
    public async Task Join_PasswordTooShort_IsRefusedInTheCallersLanguage()
    {
        var form = new { secret = await _site.LinkAsync("home", Role.Helper), name = "Ben", password = "short" };
        await AssertAsync(HttpStatusCode.BadRequest, "password: 5 Zeichen; mindestens 12 sind nötig.", await Speaking("de").PostAsync("account/join", form));
        await AssertAsync(HttpStatusCode.BadRequest, "password: 5 characters; at least 12 are needed.", await Speaking("en").PostAsync("account/join", form));
        await AssertAsync(HttpStatusCode.BadRequest, "name: Es ist kein Name angegeben.", await Speaking("de").PostAsync("account/join", form with { name = "" }));
        await AssertAsync(HttpStatusCode.NotFound, "Dieser Link ist hier nicht bekannt.", await Speaking("de").PostAsync("account/link", new { secret = "nothing" }));
    }

    [Theory]
    [InlineData(Role.Reader, "'Ben' is reader of 'home' and may not do this; a keeper may.", "„Ben“ darf „home“ nur lesen und das nicht tun; dazu muss man Imker/in sein.")]
    [InlineData(Role.Helper, "'Ben' is helper of 'home' and may not do this; a keeper may.", "„Ben“ ist in „home“ Helfer/in und darf das nicht tun; dazu muss man Imker/in sein.")]
    public async Task Role_TooLittle_IsRefusedInTheCallersLanguage(Role role, string english, string german)
    {
        var ben = await _site.JoinAsync("Ben", "home", role);
        await AssertAsync(HttpStatusCode.Forbidden, english, await ben.GetAsync("operations/home/people"));
        ben.Http.DefaultRequestHeaders.AcceptLanguage.ParseAdd("de");
        await AssertAsync(HttpStatusCode.Forbidden, german, await ben.GetAsync("operations/home/people"));
        await AssertAsync(HttpStatusCode.Forbidden, "„Ben“ gehört nicht zu „elsewhere“.", await ben.GetAsync("operations/elsewhere/people"));
    }

    [Fact]
    public async Task Reader_Writes_IsRefusedInTheCallersLanguage()
    {
        var ben = await _site.JoinAsync("Ben", "home", Role.Reader);
        await AssertAsync(HttpStatusCode.Forbidden, "'Ben' is reader of 'home' and may not do this; a helper may.", await ben.SendAsync("home", ben.Entry(1)));
        ben.Http.DefaultRequestHeaders.AcceptLanguage.ParseAdd("de");
        await AssertAsync(HttpStatusCode.Forbidden, "„Ben“ darf „home“ nur lesen und das nicht tun; dazu muss man Helfer/in sein.", await ben.SendAsync("home", ben.Entry(1)));
    }

    [Fact]
    public async Task Entries_OfAnother_AreRefusedInTheCallersLanguage()
    {
        var (anna, ben) = (await _site.JoinAsync("Anna", "home", Role.Helper), await _site.JoinAsync("Ben", "home", Role.Helper));
        ben.Http.DefaultRequestHeaders.AcceptLanguage.ParseAdd("de");
        var answer = await (await ben.SendAsync("home", ben.Entry(1) with { Author = anna.Name })).Content.ReadAsStringAsync();
        using var json = JsonDocument.Parse(answer);
        Assert.StartsWith("author: Diese Aufzeichnung steht im Namen von „Anna“, und Sie sind „Ben“.", json.RootElement.GetProperty("refused")[0].GetProperty("reason").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Exchange_TooOften_IsRefusedInTheCallersLanguage()
    {
        var ben = await _site.JoinAsync("Ben", "home", Role.Helper);
        for (var n = 0; n < 3; n++)
            Assert.Equal(HttpStatusCode.OK, (await ben.GetAsync("operations/home/entries")).StatusCode);
        await AssertAsync(HttpStatusCode.TooManyRequests, "Too many requests. Try again in", await ben.GetAsync("operations/home/entries"));
        ben.Http.DefaultRequestHeaders.AcceptLanguage.ParseAdd("de");
        await AssertAsync(HttpStatusCode.TooManyRequests, "Zu viele Anfragen. Versuchen Sie es in", await ben.GetAsync("operations/home/entries"));
    }

    private Guest Speaking(string language)
    {
        var guest = _site.Stranger();
        guest.Http.DefaultRequestHeaders.AcceptLanguage.ParseAdd(language);
        return guest;
    }

    private static Task AssertAsync(HttpStatusCode status, string words, HttpResponseMessage answer) => Problem.IsAsync(status, words, answer);
}
