using System.Net;
using System.Net.Sockets;
using Foundress.Book.Journal;
using Foundress.Server.Demo;
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
    [InlineData("--colour blue", "'--colour' is not an option")]
    [InlineData("data", "'data' is not an option")]
    [InlineData("--demo", "--demo: this build")]
    public async Task Run_BadOption_SaysWhichAndEndsWithTwo(string line, string words)
    {
        using var output = new StringWriter();
        using var errors = new StringWriter();
        Assert.Equal(ServerExit.BadOption, await ServerRun.RunAsync(line.Split(' '), null, output, errors));
        Assert.Contains(words, errors.ToString(), StringComparison.Ordinal);
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
        BookStore.Restore(folder.Path, await BackupOfAsync(folder));
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
}
