using Deque.AxeCore.Playwright;
using Foundress.Accounts;
using Foundress.ServerForTests;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

/// <summary>People and devices in a real browser, with the published server.</summary>
public sealed class AccountPageTests(PublishedApp app)
{
    private const string Password = "four words in a row";

    [Fact]
    public async Task Invitation_FromKeeperToHelper_BothShareOneBook()
    {
        await using var server = await app.ServeAsync("--accounts");
        await using var keeper = await JoinAsync(server, "Anna Keeper", Role.Keeper);
        await keeper.OpenAsync();
        await keeper.RegisterAsync("Hazel bank", "1-3");
        await keeper.GoAsync("settings");
        await keeper.Page.GetByText("Kept on this device and copied").WaitForAsync();
        await keeper.Page.GetByRole(AriaRole.Link, new() { Name = "People and devices" }).ClickAsync();
        await keeper.Page.GetByLabel("Who is it for?").FillAsync("Ben Helper");
        await keeper.Page.GetByRole(AriaRole.Button, new() { Name = "Make a link" }).ClickAsync();
        var link = await keeper.Page.Locator(".link").InnerTextAsync();

        await using var helper = await app.VisitAsync(server.Site.GetLeftPart(UriPartial.Authority));
        await helper.Page.GotoAsync(link);
        await Assertions.Expect(helper.Page.GetByLabel("Your name")).ToHaveValueAsync("Ben Helper");
        await helper.Page.GetByLabel("Password").FillAsync("short");
        await helper.Page.GetByRole(AriaRole.Button, new() { Name = "Join" }).ClickAsync();
        await helper.Page.GetByText("at least 12 are needed").WaitForAsync();
        await helper.Page.GetByLabel("Password").FillAsync(Password);
        await helper.Page.GetByRole(AriaRole.Button, new() { Name = "Join" }).ClickAsync();
        await helper.Page.GetByText("Signed in as Ben Helper").WaitForAsync();
        await helper.Page.GetByRole(AriaRole.Link, new() { Name = "Back to the book" }).ClickAsync();
        await helper.Page.GetByRole(AriaRole.Link, new() { Name = "Hazel bank" }).ClickAsync();
        await helper.Page.GetByRole(AriaRole.Heading, new() { Name = "3 colonies" }).WaitForAsync();

        await keeper.Page.ReloadAsync();
        await keeper.Page.GetByLabel("Role of Ben Helper").WaitForAsync();
        Assert.Empty(keeper.Faults);
        Assert.Empty(helper.Faults);
    }

    [Fact]
    public async Task DeviceTakenOff_KeepsEverythingAndSaysSo_UntilItSignsInAgain()
    {
        await using var server = await app.ServeAsync("--accounts");
        await using var phone = await JoinAsync(server, "Ben Helper", Role.Helper);
        await phone.OpenAsync();
        await phone.RegisterAsync("Hazel bank", "1-3");
        await phone.GoAsync("settings");
        await phone.Page.GetByText("Kept on this device and copied").WaitForAsync();
        using (var accounts = await AccountsDatabase.OpenAsync(server.Data, TimeProvider.System))
        {
            await using var context = accounts.Open();
            await new Devices(accounts).RevokeAllAsync(context, await new Registry(accounts).FindAsync("Ben Helper"));
        }

        // The sign-in has run out too: only the device's own secret was left.
        await phone.Context.ClearCookiesAsync(new() { Name = "foundress" });

        await phone.RegisterAsync("Lime row", "4-6");
        await phone.Page.GetByText("Sign in again; everything is kept on this device.").First.WaitForAsync();
        await phone.UntilKeptAsync("store.countPending('home').then(n => n === 4)");
        await phone.Page.ReloadAsync();
        await phone.GoAsync("");
        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "Lime row" }).WaitForAsync();

        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "Sign in" }).ClickAsync();
        await phone.Page.GetByLabel("Name", new() { Exact = true }).FillAsync("Ben Helper");
        await phone.Page.GetByLabel("Password").FillAsync(Password);
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await phone.Page.GetByText("Signed in as Ben Helper").WaitForAsync();
        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "Back to the book" }).ClickAsync();
        await phone.Page.GetByText("Kept on this device and copied").WaitForAsync();
        await phone.UntilKeptAsync("store.countPending('home').then(n => n === 0)");
        Assert.Empty(phone.Faults);
    }

    [Fact]
    public async Task Passkey_AddedInTheBrowser_SignsIn()
    {
        await using var server = await app.ServeAsync("--accounts");
        await using var anna = await JoinAsync(server, "Anna Keeper", Role.Keeper);
        var devtools = await anna.Context.NewCDPSessionAsync(anna.Page);
        await devtools.SendAsync("WebAuthn.enable");
        await devtools.SendAsync("WebAuthn.addVirtualAuthenticator", new()
        {
            ["options"] = new Dictionary<string, object>
            {
                ["protocol"] = "ctap2", ["transport"] = "internal", ["hasResidentKey"] = true, ["hasUserVerification"] = true,
                ["isUserVerified"] = true, ["automaticPresenceSimulation"] = true,
            },
        });
        await anna.Page.GetByRole(AriaRole.Button, new() { Name = "Add a passkey" }).ClickAsync();
        await anna.Page.GetByText("The passkey was added.").WaitForAsync();
        anna.Page.Dialog += (_, dialog) => _ = dialog.AcceptAsync();
        await anna.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await anna.Page.GetByRole(AriaRole.Button, new() { Name = "Sign in with a passkey" }).ClickAsync();
        await anna.Page.GetByText("Signed in as Anna Keeper").WaitForAsync();
        Assert.Empty(anna.Faults);
    }

    [Fact]
    public async Task CalendarAddress_MadeInTheBrowser_IsReadByAProgramUntilItIsTakenOff()
    {
        await using var server = await app.ServeAsync("--accounts");
        await using var anna = await JoinAsync(server, "Anna Keeper", Role.Keeper);
        await anna.Page.GetByRole(AriaRole.Button, new() { Name = "Make the addresses" }).ClickAsync();
        var address = new Uri(await anna.Page.Locator(".link").InnerTextAsync());
        Assert.Equal(server.Site.Authority, address.Authority);
        using var program = new HttpClient();
        Assert.StartsWith("BEGIN:VCALENDAR", await program.GetStringAsync(address), StringComparison.Ordinal);
        await anna.Page.GetByRole(AriaRole.Button, new() { Name = "Done" }).ClickAsync();
        // Of one's own card and of the keeper's list.
        await anna.Page.GetByText("last read").Nth(1).WaitForAsync();
        await Assertions.Expect(anna.Page.Locator(".link")).ToHaveCountAsync(0);
        await anna.Page.GetByRole(AriaRole.Button, new() { Name = "Take the address off" }).ClickAsync();
        await anna.Page.GetByText("Calendar programs get nothing any more.").WaitForAsync();
        using var refused = await program.GetAsync(address);
        Assert.Equal(System.Net.HttpStatusCode.Unauthorized, refused.StatusCode);
        Assert.Empty(anna.Faults);
    }

    [Fact]
    public async Task Pages_EveryThemeAndScreen_PassAxeTargetsAndWidth()
    {
        await using var server = await app.ServeAsync("--accounts");
        await using var visitor = await app.VisitAsync(server.Site.GetLeftPart(UriPartial.Authority));
        var check = new PageCheck();
        await visitor.Page.GotoAsync("/account.html");
        await visitor.Page.GetByRole(AriaRole.Heading, new() { Name = "Sign in" }).WaitForAsync();
        await visitor.Page.RunAxe();
        await check.LookAsync(visitor.Page, "account-sign-in");

        await using var keeper = await JoinAsync(server, "Anna Keeper", Role.Keeper);
        await keeper.Page.GetByRole(AriaRole.Button, new() { Name = "Make the addresses" }).ClickAsync();
        await keeper.Page.GetByText("Give these to your calendar program").WaitForAsync();
        await keeper.Page.GetByLabel("Who is it for?").FillAsync("Ben");
        await keeper.Page.GetByRole(AriaRole.Button, new() { Name = "Make a link" }).ClickAsync();
        var link = await keeper.Page.Locator(".link").Nth(1).InnerTextAsync();
        await keeper.Page.RunAxe();
        await check.LookAsync(keeper.Page, "account-people");

        await visitor.Page.GotoAsync(link);
        await visitor.Page.GetByRole(AriaRole.Heading, new() { Name = "Invitation", Exact = true }).WaitForAsync();
        await visitor.Page.RunAxe();
        await check.LookAsync(visitor.Page, "account-invitation");
        Assert.True(check.Faults.Count == 0, string.Join('\n', check.Faults));
    }

    // On a phone whose browser is German, and on one where German was chosen in the program.
    [Fact]
    public async Task Pages_InGerman_SayNothingInEnglishAndFit()
    {
        await using var server = await app.ServeAsync("--accounts");
        var address = server.Site.GetLeftPart(UriPartial.Authority);
        await using var visitor = await app.VisitAsync(address);
        var faults = new List<string>();
        await visitor.Page.GotoAsync("/account.html");
        await visitor.Page.GetByRole(AriaRole.Heading, new() { Name = "Sign in", Exact = true }).WaitForAsync();
        await visitor.Page.EvaluateAsync("localStorage.setItem('language', 'de')");
        await visitor.Page.ReloadAsync();
        await visitor.Page.GetByRole(AriaRole.Heading, new() { Name = "Anmelden", Exact = true }).WaitForAsync();
        await visitor.Page.GetByLabel("Name", new() { Exact = true }).FillAsync("Anna Keeper");
        await visitor.Page.GetByLabel("Passwort").FillAsync("not the right one");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Anmelden", Exact = true }).ClickAsync();
        await visitor.Page.GetByText("Der Name oder das Passwort stimmt nicht.").WaitForAsync();
        await LookForEnglishAsync(visitor.Page, "sign-in", faults);

        await using var keeper = await app.VisitAsync(address, locale: "de-AT");
        await keeper.Page.GotoAsync(await LinkAsync(server, "Anna Keeper", Role.Keeper));
        await keeper.Page.GetByRole(AriaRole.Heading, new() { Name = "Einladung", Exact = true }).WaitForAsync();
        await LookForEnglishAsync(keeper.Page, "invitation", faults);
        await keeper.Page.GetByLabel("Passwort").FillAsync(Password);
        await keeper.Page.GetByRole(AriaRole.Button, new() { Name = "Beitreten" }).ClickAsync();
        await keeper.Page.GetByText("Angemeldet als Anna Keeper").WaitForAsync();
        await keeper.Page.GetByRole(AriaRole.Button, new() { Name = "Adressen erstellen" }).ClickAsync();
        await keeper.Page.GetByText("Geben Sie diese Adressen Ihrem Kalenderprogramm").WaitForAsync();
        await keeper.Page.GetByLabel("Für wen ist sie?").FillAsync("Ben");
        await keeper.Page.GetByRole(AriaRole.Button, new() { Name = "Link erstellen" }).ClickAsync();
        var link = await keeper.Page.Locator(".link").Nth(1).InnerTextAsync();
        await LookForEnglishAsync(keeper.Page, "people, with what was made", faults);
        await keeper.Page.ReloadAsync();
        await keeper.Page.GetByText("Ben, Helfer/in, bis").WaitForAsync();
        await keeper.Page.GetByText("noch nicht gelesen").First.WaitForAsync();
        await LookForEnglishAsync(keeper.Page, "people", faults);

        await visitor.Page.GotoAsync(link);
        await visitor.Page.GetByText("als Helfer/in beitreten").WaitForAsync();
        await LookForEnglishAsync(visitor.Page, "invitation by a keeper", faults);
        await visitor.Page.GetByRole(AriaRole.Link, new() { Name = "Zurück zum Buch" }).ClickAsync();
        await visitor.Page.GetByText("Demo ansehen").WaitForAsync();
        Assert.True(faults.Count == 0, string.Join('\n', faults));
    }

    // Against all the page can say in English, filled in or not.
    private static async Task LookForEnglishAsync(IPage page, string name, List<string> faults)
    {
        Assert.Equal("de", await page.EvaluateAsync<string>("document.documentElement.lang"));
        if (Environment.GetEnvironmentVariable("FOUNDRESS_SHOTS") is { Length: > 0 } folder)
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"account-de-{name}.png"), FullPage = true });
        var found = await page.EvaluateAsync<string[]>("""
            async () => {
              const [english, german] = [(await import('/js/texts.en.js')).texts, (await import('/js/texts.de.js')).texts];
              const flat = value => typeof value === 'object' ? Object.values(value).flatMap(flat) : [value];
              const filled = value => typeof value === 'function' ? value('\u0001', '\u0001', '\u0001').replaceAll('undefined', '\u0001') : value;
              const [words, other] = [flat(english).map(filled), flat(german).map(filled)];
              const patterns = words.filter((text, n) => text !== other[n])
                .map(text => new RegExp('^' + text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll('\u0001', '.+?') + '$'));
              const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
              const said = [document.title.replace(' · Foundress', '')];
              while (walk.nextNode()) if (!['SCRIPT', 'NOSCRIPT'].includes(walk.currentNode.parentElement.tagName)) said.push(walk.currentNode.data);
              for (const element of document.querySelectorAll('[aria-label]')) said.push(element.getAttribute('aria-label'));
              if (said.length < 8) return ['nothing to read'];
              return said.map(text => text.trim()).filter(text => text === 'Back to the book' || patterns.some(one => one.test(text)));
            }
            """);
        faults.AddRange(found.Select(words => $"{words} ({name})"));
        if (await page.EvaluateAsync<int>("document.documentElement.scrollWidth - innerWidth") is > 0 and var over)
            faults.Add($"{name} is {over} px too wide.");
    }

    private static async Task<string> LinkAsync(ServerProcess server, string name, Role role)
    {
        using var accounts = await AccountsDatabase.OpenAsync(server.Data, TimeProvider.System);
        return (await new OneTimeLinks(accounts).MakeAsync(new LinkOffer("home", role, name, LinkOffer.Usual), null)).At(server.Site).ToString();
    }

    private async Task<Visitor> JoinAsync(ServerProcess server, string name, Role role)
    {
        var visitor = await app.VisitAsync(server.Site.GetLeftPart(UriPartial.Authority));
        await visitor.Page.GotoAsync(await LinkAsync(server, name, role));
        await visitor.Page.GetByLabel("Password").FillAsync(Password);
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Join" }).ClickAsync();
        await visitor.Page.GetByText("Signed in as " + name).WaitForAsync();
        return visitor;
    }
}
