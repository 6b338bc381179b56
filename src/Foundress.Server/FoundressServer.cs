using Foundress.Accounts;
using Foundress.Accounts.Moving;
using Foundress.Server.Accounts;
using Foundress.Server.Books;
using Foundress.Server.Demo;
using Foundress.Server.Endpoints;
using Foundress.Server.Exchange;
using Foundress.Server.Fleet;
using Foundress.Server.OpenApi;
using Foundress.Server.Running;
using Foundress.Server.Problems;
using Foundress.Server.Security;
using Foundress.Storage;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Hosting.StaticWebAssets;

namespace Foundress.Server;

/// <summary>A running server: the book, the address it answers at, and the way to stop it.</summary>
public sealed class FoundressServer : IAsyncDisposable
{
    /// <summary>The longest request body, in bytes.</summary>
    public const int GreatestBody = 8 * 1024 * 1024;

    private readonly WebApplication _app;

    private FoundressServer(WebApplication app, BookStore store, AccountsDatabase? accounts) => (_app, Store, Accounts) = (app, store, accounts);

    /// <summary>What the server is made of, for tests.</summary>
    internal IServiceProvider Services => _app.Services;

    /// <summary>The book.</summary>
    public BookStore Store { get; }

    /// <summary>The accounts; null where everybody at this computer is the keeper.</summary>
    public AccountsDatabase? Accounts { get; }

    /// <summary>Every address it answers at, for tests.</summary>
    internal IReadOnlyList<Endpoint> Endpoints => _app.Services.GetRequiredService<EndpointDataSource>().Endpoints;

    /// <summary>Where it answers.</summary>
    public Uri Address { get; private set; } = null!;

    /// <summary>Opens the book and begins to answer: on this computer only, unless more was asked for.</summary>
    /// <param name="options">What was asked for.</param>
    /// <param name="demo">Where the invented records come from, when they were asked for.</param>
    /// <param name="storage">How the store behaves.</param>
    /// <param name="limits">How often one may knock, where there are accounts.</param>
    /// <exception cref="StorageException">The book cannot be opened.</exception>
    /// <exception cref="AccountsException">The accounts cannot be opened.</exception>
    /// <exception cref="CertificateException">The certificate cannot be used.</exception>
    /// <exception cref="IOException">The port is taken.</exception>
    public static async Task<FoundressServer> StartAsync(
        ServerOptions options, IDemoBook? demo = null, BookStoreOptions? storage = null, RateLimits? limits = null)
    {
        storage = (storage ?? new BookStoreOptions()) with { Database = options.Database };
        storage = storage with { Companion = new AccountsBackups(options.Data, options.Database, storage.Time) };
        var store = await BookStore.OpenAsync(options.Data, storage);
        AccountsDatabase? accounts = null;
        WebApplication? app = null;
        try
        {
            // Accounts once made are always used, so that a forgotten option cannot open the book.
            if (options.Reach.Accounts || await AccountsDatabase.ExistAsync(options.Data, options.Database))
                accounts = await AccountsDatabase.OpenAsync(options.Data, storage.Time, options.Database);
            if (accounts is not null)
                await AccountsTrouble.TellAsync(() => new SignInLog(accounts).PruneAsync());
            if (options.Demo && demo is not null)
                await DemoFill.RunAsync(store, demo, storage.Time);
            app = Build(options, store, accounts, storage.Time, limits ?? new RateLimits());
            var server = new FoundressServer(app, store, accounts);
            if (accounts is not null)
                await AccountsTrouble.TellAsync(() => CookieKeys.MakeSureAsync(accounts, app.Services));
            await app.StartAsync();
            var bound = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
            var scheme = options.Reach.Certificate is null ? "http" : "https";
            server.Address = new Uri($"{scheme}://{(options.Reach.Proxy is null ? options.Reach.Name : null) ?? "localhost"}:{PortOf(bound)}/");
            return server;
        }
        catch
        {
            // With it end what it has begun already, before what that works with.
            if (app is not null)
                await app.DisposeAsync();
            accounts?.Dispose();
            store.Dispose();
            throw;
        }
    }

    /// <summary>Returns once the program is asked to end and the last requests have been answered.</summary>
    public Task UntilStoppedAsync() => _app.WaitForShutdownAsync();

    /// <summary>Stops answering and closes the book.</summary>
    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
        Accounts?.Dispose();
        Store.Dispose();
    }

    // Behind the last colon, whatever the address before it is written like.
    private static int PortOf(string address) =>
        int.Parse(address.AsSpan(address.LastIndexOf(':') + 1).TrimEnd('/'), System.Globalization.CultureInfo.InvariantCulture);

    private static WebApplication Build(ServerOptions options, BookStore store, AccountsDatabase? accounts, TimeProvider time, RateLimits limits)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(FoundressServer).Assembly.GetName().Name,
            // Wherever it is started from.
            ContentRootPath = AppContext.BaseDirectory,
        });
        StaticWebAssetsLoader.UseStaticWebAssets(builder.Environment, builder.Configuration);
        // The web framework's own messages can hold addresses that name things of the keeper's.
        builder.Logging.ClearProviders().AddBookConsole(options.Running.Log);
        builder.Logging.SetMinimumLevel(LogLevel.Warning).AddFilter("Foundress", LogLevel.Information)
            // They tell of errors with their messages, which can hold what was recorded; ours tell of them without.
            .AddFilter("Microsoft.AspNetCore.Diagnostics.ExceptionHandlerMiddleware", LogLevel.None)
            // A start that fails is told once, in plain words.
            .AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = GreatestBody;
            ListenAt.Apply(kestrel, options);
        });
        builder.WebHost.UseKestrelHttpsConfiguration();
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(10));
        builder.Services.ConfigureHttpJsonOptions(json => json.SerializerOptions.TypeInfoResolverChain.Insert(0, ServerJson.Default));
        builder.Services.AddExchangePacking();
        ApiDocument.Add(builder.Services);
        builder.Services.AddProblemDetails();
        builder.Services.AddExceptionHandler<ProblemHandler>();
        builder.Services.AddSingleton(_ => store);
        builder.Services.AddSingleton<ApiaryBooks>();
        builder.Services.AddSingleton<ReadAhead>().AddHostedService(services => services.GetRequiredService<ReadAhead>());
        if (options.Forecasts)
            builder.Services.AddHostedService<FleetForecasts>();
        builder.Services.AddSingleton(time);
        builder.Services.AddSingleton(options.Reach);
        builder.Services.AddRunning(options.Running);
        builder.Services.ConfigureHttpJsonOptions(json => json.SerializerOptions.TypeInfoResolverChain.Insert(1, AccountsJson.Default));
        if (accounts is not null)
            builder.Services.AddAccounts(accounts, options.Reach, limits);

        var app = builder.Build();
        app.UseMiddleware<SecurityHeaders>();
        app.UseRunning(options.Running);
        app.UseReaderLanguage();
        app.UsePackedAnswers();
        app.UseExceptionHandler();
        app.UseStatusCodePages(pages => ProblemAnswer.WriteAsync(pages.HttpContext, pages.HttpContext.Response.StatusCode));
        app.UseMiddleware<ProxyRules>();
        if (options.Reach.Proxy is { } proxy)
            app.UseForwardedHeaders(ListenAt.Behind(proxy));
        app.UseMiddleware<OwnNamesOnly>();
        app.UseMiddleware<SameOriginWrites>();
        if (accounts is not null)
        {
            // Said here: otherwise it would come before everything that guards and explains.
            app.UseAuthentication();
            app.UseAuthorization();
            app.UseRateLimiter();
        }

        app.UsePackedRequests();
        app.MapHealth();
        var api = app.MapGroup("/api/v1").AddEndpointFilter<RouteGroupBuilder, WorkMeter>();
        api.MapAbout();
        api.MapEntries();
        api.MapDemo();
        api.MapBackups();
        var whole = api.MapGroup(string.Empty).AddEndpointFilter<RouteGroupBuilder, WholeBookTurns>();
        whole.MapReport();
        whole.MapBook();
        api.MapApiaries();
        whole.MapBookFile();
        api.MapOpenApi("/openapi.json");
        if (accounts is not null)
        {
            api.MapAccount();
            api.MapLinks();
            api.MapPasskeys();
            api.MapPeople();
            api.MapCalendarLinks();
        }

        app.MapGroup(string.Empty).AddEndpointFilter<RouteGroupBuilder, WholeBookTurns>().MapCalendar();
        app.Map("/api/{**path}", () => TypedResults.Problem(
            statusCode: StatusCodes.Status404NotFound, title: ProblemTexts.NoSuchAddressTitle,
            detail: ProblemTexts.NoSuchAddress)).ExcludeFromDescription();
        app.MapStaticAssets();
        app.MapFallbackToFile("index.html");
        return app;
    }
}
