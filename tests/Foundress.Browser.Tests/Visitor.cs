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

    /// <summary>Goes to a place inside the running app, without loading the page again.</summary>
    public async Task GoAsync(string address)
    {
        await Page.EvaluateAsync("address => Blazor.navigateTo(address)", address);
        await Page.WaitForURLAsync("**/" + address);
    }

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

    public ValueTask DisposeAsync() => Context.DisposeAsync();

    private void Note(string fault)
    {
        lock (_faults)
            _faults.Add(fault);
    }
}
