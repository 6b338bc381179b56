using System.Net;
using Foundress.Server.Demo;
using Foundress.Server.Endpoints;
using Foundress.Server.Exchange;
using Foundress.Server.OpenApi;
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

    private FoundressServer(WebApplication app, BookStore store) => (_app, Store) = (app, store);

    /// <summary>The book.</summary>
    public BookStore Store { get; }

    /// <summary>Where it answers.</summary>
    public Uri Address { get; private set; } = null!;

    /// <summary>Opens the book and begins to answer, on this computer only.</summary>
    /// <param name="options">What was asked for.</param>
    /// <param name="demo">Where the invented records come from, when they were asked for.</param>
    /// <param name="storage">How the store behaves.</param>
    /// <exception cref="StorageException">The book cannot be opened.</exception>
    /// <exception cref="IOException">The port is taken.</exception>
    public static async Task<FoundressServer> StartAsync(
        ServerOptions options, IDemoBook? demo = null, BookStoreOptions? storage = null)
    {
        storage ??= new BookStoreOptions();
        var store = await BookStore.OpenAsync(options.Data, storage);
        try
        {
            if (options.Demo && demo is not null)
                await DemoFill.RunAsync(store, demo, storage.Time);
            var app = Build(options, store);
            var server = new FoundressServer(app, store);
            await app.StartAsync();
            var port = new Uri(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First()).Port;
            server.Address = new Uri($"http://localhost:{port}/");
            return server;
        }
        catch
        {
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
        Store.Dispose();
    }

    private static WebApplication Build(ServerOptions options, BookStore store)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(FoundressServer).Assembly.GetName().Name,
            // Wherever it is started from.
            ContentRootPath = AppContext.BaseDirectory,
        });
        StaticWebAssetsLoader.UseStaticWebAssets(builder.Environment, builder.Configuration);
        // Standard output carries the address only. The web framework's own messages can hold addresses that name things of the keeper's.
        builder.Logging.ClearProviders().AddConsole(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
        builder.Logging.SetMinimumLevel(LogLevel.Warning).AddFilter("Foundress", LogLevel.Information)
            // A start that fails is told once, in plain words.
            .AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = GreatestBody;
            if (options.Port == 0)
                kestrel.Listen(IPAddress.Loopback, 0);
            else
                kestrel.ListenLocalhost(options.Port);
        });
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(10));
        builder.Services.ConfigureHttpJsonOptions(json => json.SerializerOptions.TypeInfoResolverChain.Insert(0, ServerJson.Default));
        builder.Services.AddExchangePacking();
        ApiDocument.Add(builder.Services);
        builder.Services.AddProblemDetails();
        builder.Services.AddExceptionHandler<ProblemHandler>();
        builder.Services.AddSingleton(_ => store);
        builder.Services.AddSingleton(TimeProvider.System);

        var app = builder.Build();
        app.UseMiddleware<SecurityHeaders>();
        app.UsePackedAnswers();
        app.UseExceptionHandler();
        app.UseStatusCodePages();
        app.UseMiddleware<LocalHostsOnly>();
        app.UseMiddleware<SameOriginWrites>();
        app.UsePackedRequests();
        app.MapHealth();
        var api = app.MapGroup("/api/v1");
        api.MapAbout();
        api.MapEntries();
        api.MapDemo();
        api.MapBackups();
        api.MapReport();
        api.MapBook();
        api.MapBookFile();
        api.MapOpenApi("/openapi.json");
        app.MapCalendar();
        app.Map("/api/{**path}", () => TypedResults.Problem(
            statusCode: StatusCodes.Status404NotFound, title: "No such address",
            detail: "There is nothing at this address, or it does not take this kind of request.")).ExcludeFromDescription();
        app.MapStaticAssets();
        app.MapFallbackToFile("index.html");
        return app;
    }
}
