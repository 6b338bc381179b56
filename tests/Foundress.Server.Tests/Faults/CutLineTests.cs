using System.Globalization;
using System.Net.Sockets;
using System.Text;
using Foundress.Book.Journal;

namespace Foundress.Server.Tests.Faults;

/// <summary>The network goes in the middle of a body, at every sort of place.</summary>
public sealed class CutLineTests(ITestOutputHelper output)
{
    private const int Cuts = 300;

    [Fact]
    public async Task Send_CutOffInMidBody_KeepsAllOfItOrNothing()
    {
        using var folder = new TempData();
        using var server = await BuiltServer.StartAsync(folder.Path);
        using var line = new Line();
        line.LeadTo(server.Address);
        var (sent, kept) = (0, 0);
        for (var cut = 0; cut < Cuts; cut++)
        {
            var entries = Enumerable.Range(0, 1 + Random.Shared.Next(60)).Select(n => Site.Entry((cut * 100) + n)).ToArray();
            var plain = EntryJson.WriteMany(entries);
            var how = cut % 3;
            var body = how == 0 ? Packing.Gzip(plain) : plain;
            // Now and then everything but the answer goes through.
            var at = cut % 10 == 9 ? body.Length : Random.Shared.Next(0, body.Length);
            await SendPartAsync(server.Address.Port, body, at, packed: how == 0, inChunks: how == 1, reset: cut % 2 == 0);
            // The same again over a good line, as the phone does; by then the server has done with the first.
            var reply = await line.PushAsync("home", entries);
            Assert.Empty(reply.Refused);
            sent += entries.Length;
            if (at < body.Length)
                kept++;
        }

        var held = await line.AllAsync("home");
        Assert.Equal(sent, held.Count);
        Assert.Distinct(held.Select(entry => entry.Id));
        Assert.Empty(line.Acknowledged.Except(held.Select(entry => entry.Id)));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Cuts} cuts, {kept} of them inside the body, {sent} entries acknowledged, 0 missing, 0 doubled"));
    }

    // Nothing is sent after the cut, so whatever is held came from a body that was not whole.
    [Fact]
    public async Task Send_CutOffInMidBody_KeepsNothingOfIt()
    {
        using var folder = new TempData();
        using var server = await BuiltServer.StartAsync(folder.Path);
        using var line = new Line();
        line.LeadTo(server.Address);
        var body = EntryJson.WriteMany([.. Enumerable.Range(0, 400).Select(n => Site.Entry(n))]);
        for (var cut = 0; cut < 100; cut++)
            await SendPartAsync(server.Address.Port, body, Random.Shared.Next(0, body.Length), packed: false, inChunks: cut % 2 == 0, reset: cut % 3 == 0);
        Assert.Empty(await line.AllAsync("home"));
    }

    private static async Task SendPartAsync(int port, byte[] body, int until, bool packed, bool inChunks, bool reset)
    {
        using var caller = new TcpClient();
        await caller.ConnectAsync("127.0.0.1", port);
        if (reset)
            caller.LingerState = new LingerOption(enable: true, seconds: 0);
        var stream = caller.GetStream();
        var length = inChunks ? "Transfer-Encoding: chunked" : $"Content-Length: {body.Length}";
        await stream.WriteAsync(Encoding.ASCII.GetBytes(
            $"POST /{Site.Entries("home")} HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\n{length}\r\n{(packed ? "Content-Encoding: gzip\r\n" : "")}\r\n"));
        if (inChunks)
            await stream.WriteAsync(Encoding.ASCII.GetBytes($"{body.Length:x}\r\n"));
        await stream.WriteAsync(body.AsMemory(0, until));
        if (inChunks && until == body.Length)
            await stream.WriteAsync("\r\n0\r\n\r\n"u8.ToArray());
    }
}
