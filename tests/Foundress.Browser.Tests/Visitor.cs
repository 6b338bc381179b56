using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

/// <summary>One visitor with a browser of their own, and what went wrong on their pages.</summary>
public sealed class Visitor : IAsyncDisposable
{
    private readonly List<string> _faults = [];

    private Visitor(IBrowserContext context) => Context = context;

    /// <summary>Their browser.</summary>
    public IBrowserContext Context { get; }

    /// <summary>Their first page.</summary>
    public IPage Page { get; private set; } = default!;

    /// <summary>Script errors and breaches of the content security policy seen so far.</summary>
    public IReadOnlyList<string> Faults
    {
        get
        {
            lock (_faults)
                return [.. _faults];
        }
    }

    internal static async Task<Visitor> EnterAsync(IBrowserContext context)
    {
        var visitor = new Visitor(context);
        await context.AddInitScriptAsync(
            "addEventListener('securitypolicyviolation', e => console.error('CSP ' + e.violatedDirective + ' ' + e.blockedURI + ' ' + e.sample))");
        visitor.Page = await visitor.NewPageAsync();
        return visitor;
    }

    /// <summary>Another tab.</summary>
    public async Task<IPage> NewPageAsync()
    {
        var page = await Context.NewPageAsync();
        page.PageError += (_, error) => Note("script: " + error);
        page.Console += (_, message) =>
        {
            // A failed fetch is what being offline looks like; the app says so in its own words.
            if (message.Type == "error" && !message.Text.Contains("Failed to load resource", StringComparison.Ordinal))
                Note("console: " + message.Text);
        };
        return page;
    }

    /// <summary>Opens the app and waits until the book is open.</summary>
    public async Task OpenAsync(string address = "")
    {
        await Page.GotoAsync("/" + address);
        await Page.Locator("h1").WaitForAsync();
    }

    /// <summary>Waits until the program is on the device for use without a network.</summary>
    public Task OfflineReadyAsync() => Page.EvaluateAsync("navigator.serviceWorker.ready.then(r => r.active.state === 'activated' || new Promise(done => r.active.addEventListener('statechange', e => e.target.state === 'activated' && done())))");

    /// <summary>Waits until what the device keeps is as it should be.</summary>
    /// <param name="expression">A promise of true or false, with the app's own store module as <c>store</c>.</param>
    public Task UntilKeptAsync(string expression) => Patiently.UntilAsync(() => Page.EvaluateAsync<bool>($"import('/js/store.js').then(store => {expression})"));

    /// <summary>Holds up what the page sends to its workers, so that what they work on is still under way.</summary>
    public Task HoldWorkersAsync() => Page.EvaluateAsync(
        "() => { const post = Worker.prototype.postMessage, held = []; Worker.prototype.postMessage = function (...all) { held.push(() => post.apply(this, all)); }; window.letGo = () => { Worker.prototype.postMessage = post; held.forEach(one => one()); }; }");

    /// <summary>Sends them what was held up.</summary>
    public Task LetWorkersGoAsync() => Page.EvaluateAsync("letGo()");

    /// <summary>Does something, and waits until an exchange that began later has gone through.</summary>
    public async Task UntilExchangedAsync(Func<Task> first)
    {
        const string last = "store.metaGet('exchanged').then(at => Number(at ?? 0))";
        var before = await Page.EvaluateAsync<double>($"import('/js/store.js').then(store => {last})");
        await first();
        await UntilKeptAsync(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{last}.then(at => at > {before})"));
    }

    /// <summary>Waits until an expression holds on the page, also across a load of it. The browser's own waiting evaluates text, which the app's policy forbids.</summary>
    /// <param name="expression">True or false.</param>
    public async Task UntilAsync(string expression)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromMilliseconds(PublishedApp.Patience));
        while (true)
        {
            try
            {
                if (await Page.EvaluateAsync<bool>(expression))
                    return;
            }
            catch (PlaywrightException) when (!patience.IsCancellationRequested)
            {
                // The page is being loaded.
            }

            await Task.Delay(100, patience.Token);
        }
    }

    /// <summary>Goes to a place inside the running app, without loading the page again.</summary>
    public async Task GoAsync(string address)
    {
        // A page that was just loaded has its program on the way still.
        await UntilAsync("typeof Blazor === 'object' && document.querySelector('h1') !== null");
        await Page.EvaluateAsync("address => Blazor.navigateTo(address)", address);
        await UntilAtAsync(address);
    }

    /// <summary>
    /// Waits until the first page is at an address. It asks again and again: waiting for the event of going there, as
    /// the library does of itself, misses one that comes between the first look and the wait.
    /// </summary>
    public Task UntilAtAsync(string address) => Assertions.Expect(Page).ToHaveURLAsync(new Regex("/" + Regex.Escape(address) + "$"));

    /// <summary>Registers an apiary and colonies by hand; ends on the apiary's page.</summary>
    public async Task RegisterAsync(string apiary, string colonies)
    {
        await GoAsync("apiary/new");
        await Page.GetByLabel("Name", new() { Exact = true }).FillAsync(apiary);
        await Page.GetByRole(AriaRole.Button, new() { Name = "Register the apiary" }).ClickAsync();
        await Page.GetByLabel("Numbers or names").FillAsync(colonies);
        await Page.GetByRole(AriaRole.Button, new() { Name = "Register", Exact = true }).ClickAsync();
        await Page.GetByRole(AriaRole.Heading, new() { Name = apiary, Exact = true }).WaitForAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await TellAsync();
        try
        {
            await Context.DisposeAsync();
        }
        catch (PlaywrightException) when (Page.IsClosed || Context.Pages.Count == 0)
        {
            // Its browser was killed: there is nothing left to close.
        }
    }

    // Where the page stood at the end: shown beside a test that failed, which may not fail again.
    private async Task TellAsync()
    {
        try
        {
            var seen = await Page.Locator("body").InnerTextAsync(new() { Timeout = 2000 });
            var words = string.Join(' ', seen.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
            TestContext.Current.TestOutputHelper?.WriteLine($"{Page.Url}: {(words.Length > 1500 ? words[..1500] + " ..." : words)}");
        }
        catch (Exception gone) when (gone is PlaywrightException or TimeoutException)
        {
            TestContext.Current.TestOutputHelper?.WriteLine(Page.Url + ": " + gone.Message);
        }
    }

    private void Note(string fault)
    {
        lock (_faults)
            _faults.Add(fault);
    }
}
