using System.Diagnostics.Metrics;
using System.Net;
using System.Net.Sockets;
using Foundress.Book.Journal;
using Foundress.Server.Demo;
using Foundress.Server.Running;
using Foundress.Server.Tests.Running;
using Foundress.Storage;

namespace Foundress.Server.Tests;

public class RunTests
{
    [Theory]
    [InlineData("--port 70000", "'70000'")]
    [InlineData("--port=five", "'five'")]
    [InlineData("--port", "--port needs a value")]
    [InlineData("--address 0.0.0.0", "no accounts")]
    [InlineData("--address=192.168.1.20", "no accounts")]
    [InlineData("--listen 0.0.0.0", "foundress account add")]
    [InlineData("--proxy 127.0.0.1", "no accounts")]
    [InlineData("--accounts --listen 0.0.0.0", "--certificate FILE")]
    [InlineData("--accounts --proxy 127.0.0.1", "--name: is missing")]
    [InlineData("--accounts --listen ::", "without HTTPS")]
    [InlineData("--listen garden", "'garden' is not an address")]
    [InlineData("--proxy nginx", "'nginx' is not an address")]
    [InlineData("--name https://bees.example", "without https://")]
    [InlineData("--certificate /no/such/file.pem", "there is no file")]
    [InlineData("--key /etc/hostname", "without its certificate")]
    [InlineData("--colour blue", "'--colour' is not an option")]
    [InlineData("data", "'data' is not an option")]
    [InlineData("--demo", "--demo: this build")]
    [InlineData("--database Password=hush", "--database: 'Host' is missing")]
    [InlineData("--database=postgres://keeper:hush@db/book", "--database: the setting cannot be read")]
    public async Task Run_BadOption_SaysWhichAndEndsWithTwo(string line, string words)
    {
        using var output = new StringWriter();
        using var errors = new StringWriter();
        Assert.Equal(ServerExit.BadOption, await ServerRun.RunAsync(line.Split(' '), null, output, errors));
        Assert.Contains(words, errors.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("hush", errors.ToString(), StringComparison.Ordinal);
        Assert.Empty(output.ToString());
    }

    [Fact]
    public void Parse_AllOptions_AreTaken()
    {
        var options = ServerOptions.TryParse(["--port", "6000", "--data=/tmp/book", "--demo", "--address", "localhost"], out var problem);
        Assert.Null(problem);
        Assert.Equal(new ServerOptions(6000, "/tmp/book", true), options);
        Assert.Equal(5210, ServerOptions.TryParse([], out _)!.Port);
    }

    [Fact]
    public void Database_FromTheCommandLine_StandsBeforeTheEnvironment()
    {
        var bare = ServerOptions.TryParse([], out _)!;
        Assert.Null(bare.WithDatabase(null, out _).Database);
        Assert.Null(bare.WithDatabase(" ", out _).Database);
        Assert.Equal("'a' on one:5432", bare.WithDatabase("Host=one;Database=a", out _).Database!.ToString());
        var named = ServerOptions.TryParse(["--database", "Host=two;Database=b;Password=hush"], out _)!.WithDatabase("Host=one;Database=a", out var problem);
        Assert.Null(problem);
        Assert.Equal("'b' on two:5432", named.Database!.ToString());
        Assert.DoesNotContain("hush", named.ToString(), StringComparison.Ordinal);
        bare.WithDatabase("Host=one;Password=hush", out problem);
        Assert.Equal($"FOUNDRESS_DATABASE: 'Database' is missing. Write the setting as in '{PostgresAddress.Example}'.", problem);
    }

    [Fact]
    public async Task Run_NoDatabaseServer_SaysSoAndEndsWithFour()
    {
        using var folder = new TempData();
        using var output = new StringWriter();
        using var errors = new StringWriter();
        var line = (string[])["--port=0", "--data", folder.Path, "--database", "Host=nowhere.invalid;Database=book;Username=keeper;Password=hush"];
        Assert.Equal(ServerExit.NoBook, await ServerRun.RunAsync(line, null, output, errors));
        Assert.Contains("'book' on nowhere.invalid:5432 cannot be reached", errors.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("hush", errors.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, true)]
    [InlineData("http://localhost:80", true)]
    [InlineData("http://127.0.0.1:80;http://[::1]:80", true)]
    [InlineData("http://localhost:80;http://0.0.0.0:80", false)]
    [InlineData("http://*:80", false)]
    [InlineData("http://+:80", false)]
    public void Addresses_FromTheEnvironment_MustBeThisComputer(string? addresses, bool good) =>
        Assert.Equal(good, ServerOptions.ProblemWithAddresses(addresses) is null);

    [Fact]
    public async Task Run_PortTaken_SaysSoAndEndsWithThree()
    {
        using var folder = new TempData();
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        var port = ((IPEndPoint)taken.LocalEndpoint).Port;
        using var output = new StringWriter();
        using var errors = new StringWriter();
        Assert.Equal(
            ServerExit.PortInUse, await ServerRun.RunAsync(["--port", $"{port}", "--data", folder.Path], null, output, errors));
        Assert.Contains($"Port {port}", errors.ToString(), StringComparison.Ordinal);
        Assert.Contains("--port", errors.ToString(), StringComparison.Ordinal);
        // And lets go of the book.
        await BookStore.RestoreAsync(folder.Path, await BackupOfAsync(folder));
    }

    [Fact]
    public async Task Run_NoBook_SaysSoAndEndsWithFour()
    {
        using var folder = new TempData();
        await File.WriteAllTextAsync(System.IO.Path.Combine(folder.Path, "foundress.db"), "a shopping list");
        using var output = new StringWriter();
        using var errors = new StringWriter();
        Assert.Equal(ServerExit.NoBook, await ServerRun.RunAsync(["--port=0", "--data", folder.Path], null, output, errors));
        Assert.Contains("foundress.db", errors.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Start_WithDemo_FillsItInOnce()
    {
        using var folder = new TempData();
        var options = new ServerOptions(0, folder.Path, Demo: true);
        for (var n = 0; n < 2; n++)
        {
            await using var server = await FoundressServer.StartAsync(options, new ThreeEntries(from: 10 * n));
            Assert.Equal([new OperationCount("demo", 3)], await server.Store.OperationsAsync());
        }
    }

    private static async Task<string> BackupOfAsync(TempData folder)
    {
        using var store = await BookStore.OpenAsync(folder.Path);
        return (await store.BackupAsync()).File;
    }

    private sealed class ThreeEntries(int from) : IDemoBook
    {
        public ulong Seed => 5;

        public IReadOnlyList<Entry> Entries(DateOnly today) =>
            [.. Enumerable.Range(from, 3).Select(n => Site.Entry(n, Operations.Demo))];
    }

    // Its meters, timers and connections would otherwise live on in a program that tries again.
    [Fact]
    public async Task Start_Failing_EndsWhatItHasBegun()
    {
        using var folder = new TempData();
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        var own = new AsyncLocal<bool>();
        var (begun, ended) = (new List<Instrument>(), new List<Instrument>());
        using var listener = new MeterListener
        {
            InstrumentPublished = (instrument, listening) =>
            {
                // Other tests have servers of their own at the same time.
                if (instrument.Meter.Name != ServerMeters.Name || !own.Value)
                    return;
                begun.Add(instrument);
                listening.EnableMeasurementEvents(instrument);
            },
            MeasurementsCompleted = (instrument, _) => ended.Add(instrument),
        };
        listener.Start();
        own.Value = true;
        await Assert.ThrowsAnyAsync<IOException>(() => FoundressServer.StartAsync(new ServerOptions(((IPEndPoint)taken.LocalEndpoint).Port, folder.Path, Demo: false)));
        Assert.NotEmpty(begun);
        Assert.Equal(begun.Select(instrument => instrument.Name).Order(), ended.Select(instrument => instrument.Name).Order());
        // And the book is free.
        (await BookStore.OpenAsync(folder.Path, new BookStoreOptions { Alone = true })).Dispose();
    }
}
