using System.Diagnostics;
using Foundress.ServerForTests;
using Microsoft.Playwright;

namespace Foundress.Browser.Tests;

/// <summary>
/// The published program and one Chromium for all tests. Set FOUNDRESS_PUBLISHED to a folder that holds the published server
/// to save publishing it again, and FOUNDRESS_CHROMIUM to a browser that is not in a usual place.
/// </summary>
public sealed class PublishedApp : IAsyncLifetime
{
    /// <summary>How long something is waited for, in ms, before it is said not to come: long, as how fast a machine is decides no test.</summary>
    internal const int Patience = 60_000;

    private static readonly string[] UsualPlaces =
        ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome", "/usr/lib/chromium/chromium", "/snap/bin/chromium"];

    // The closed-network flags keep Chromium's own start-up traffic from getting in the way of what is measured.
    private static readonly string[] Flags =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    private readonly SemaphoreSlim _starting = new(1, 1);
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>The folder of the published server.</summary>
    public string Folder { get; private set; } = string.Empty;

    /// <summary>The folder of the files the browser is given.</summary>
    public string WebRoot => Path.Combine(Folder, "wwwroot");

    public async ValueTask InitializeAsync()
    {
        Folder = Environment.GetEnvironmentVariable("FOUNDRESS_PUBLISHED") is { Length: > 0 } given ? given : await PublishAsync();
        Assert.True(File.Exists(Path.Combine(WebRoot, "service-worker-assets.js")), $"'{Folder}' holds no published server: wwwroot/service-worker-assets.js is missing.");
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _playwright?.Dispose();
        _starting.Dispose();
    }

    /// <summary>The published server itself, with an empty data folder of its own.</summary>
    public Task<ServerProcess> ServeAsync(params string[] more) => ServerProcess.StartAsync(Folder, null, null, more);

    /// <summary>A visitor with an empty browser of their own.</summary>
    /// <inheritdoc cref="VisitAsync(string, int, int, string, bool)"/>
    public Task<Visitor> VisitAsync(PublishedHost host, int width = 390, int height = 844, string locale = "en-GB", bool keepsProgram = false) =>
        VisitAsync(host.Address, width, height, locale, keepsProgram);

    /// <summary>A visitor with an empty browser of their own.</summary>
    /// <param name="address">The server.</param>
    /// <param name="width">Of the screen, in px; a narrow one is touched.</param>
    /// <param name="height">Of the screen, in px.</param>
    /// <param name="locale">The browser's language.</param>
    /// <param name="keepsProgram">
    /// Whether the browser can keep the program for use without a network. Keeping it takes a sixth of the work of a first
    /// visit, so most visitors' browsers have no service workers.
    /// </param>
    public async Task<Visitor> VisitAsync(string address, int width = 390, int height = 844, string locale = "en-GB", bool keepsProgram = false)
    {
        var browser = await BrowserAsync();
        var context = await browser.NewContextAsync(new()
        {
            BaseURL = address,
            ViewportSize = new() { Width = width, Height = height },
            Locale = locale,
            TimezoneId = "Europe/Berlin",
            HasTouch = width < 600,
            ReducedMotion = ReducedMotion.Reduce,
        });
        context.SetDefaultTimeout(Patience);
        if (!keepsProgram)
            await context.AddInitScriptAsync("delete Navigator.prototype.serviceWorker");
        return await Visitor.EnterAsync(context);
    }

    /// <summary>A phone that keeps what it has in a folder, from one start of its browser to the next.</summary>
    public async Task<Visitor> PhoneAsync(string folder, string address)
    {
        await BrowserAsync();
        var context = await _playwright!.Chromium.LaunchPersistentContextAsync(folder, new()
        {
            ExecutablePath = Chromium(),
            Args = Flags,
            BaseURL = address,
            ViewportSize = new() { Width = 390, Height = 844 },
            Locale = "en-GB",
            TimezoneId = "Europe/Berlin",
            HasTouch = true,
            ReducedMotion = ReducedMotion.Reduce,
        });
        context.SetDefaultTimeout(Patience);
        return await Visitor.EnterAsync(context);
    }

    private static async Task<string> PublishAsync()
    {
        var root = RepositoryRoot();
        var folder = Path.Combine(root, "artifacts", "browser-tests", "published");
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
        using var publish = Process.Start(new ProcessStartInfo("dotnet")
        {
            ArgumentList = { "publish", Path.Combine(root, "src", "Foundress.Server"), "-c", "Release", "-o", folder, "--nologo", "-v", "q" },
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var errors = publish.StandardError.ReadToEndAsync();
        var output = await publish.StandardOutput.ReadToEndAsync();
        await publish.WaitForExitAsync();
        Assert.True(publish.ExitCode == 0, $"Publishing the server failed:\n{output}\n{await errors}");
        return folder;
    }

    internal static string RepositoryRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Foundress.slnx")))
                return folder.FullName;
        }

        throw new InvalidOperationException($"No folder above '{AppContext.BaseDirectory}' holds Foundress.slnx. Run the tests from a clone, or set FOUNDRESS_PUBLISHED.");
    }

    private async Task<IBrowser> BrowserAsync()
    {
        var chromium = Chromium();
        Assert.SkipWhen(chromium is null, "No Chromium was found. Install Debian's package chromium, or set FOUNDRESS_CHROMIUM.");
        await _starting.WaitAsync();
        try
        {
            Assertions.SetDefaultExpectTimeout(Patience);
            _playwright ??= await Playwright.CreateAsync();
            return _browser ??= await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = chromium, Args = Flags });
        }
        finally
        {
            _starting.Release();
        }
    }

    private static string? Chromium() =>
        Environment.GetEnvironmentVariable("FOUNDRESS_CHROMIUM") is { Length: > 0 } given ? given : UsualPlaces.FirstOrDefault(File.Exists);
}
