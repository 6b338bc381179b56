using System.Net;
using System.Net.Sockets;
using System.Text;
using Foundress.Book.Journal;
using Foundress.Storage;

namespace Foundress.Server.Tests.Running;

public class ShutdownTests
{
    [Fact]
    public async Task Terminate_WithARequestInFlight_AnswersItClosesTheBookAndEndsWithNought()
    {
        using var data = new TempData();
        await using var server = await ProgramRun.ServerAsync(data.Path);
        var body = EntryJson.WriteMany([Site.Entry(1), Site.Entry(2)]);
        using var caller = new TcpClient();
        await caller.ConnectAsync(IPAddress.Loopback, server.Address.Port);
        var stream = caller.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(
            $"POST /{Site.Entries("home")} HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: {body.Length}\r\nExpect: 100-continue\r\n\r\n"));
        using var reader = new StreamReader(stream);
        // The server is reading the body now.
        Assert.Equal("HTTP/1.1 100 Continue", await reader.ReadLineAsync());
        await stream.WriteAsync(body.AsMemory(0, body.Length / 2));

        server.AskToEnd();
        await NobodyListensAsync(server.Address.Port);
        await stream.WriteAsync(body.AsMemory(body.Length / 2));
        Assert.Equal("", await reader.ReadLineAsync());
        Assert.Equal("HTTP/1.1 200 OK", await reader.ReadLineAsync());
        Assert.Contains("\"accepted\":2,\"known\":0,\"refused\":[]", await reader.ReadToEndAsync(), StringComparison.Ordinal);

        var ended = await server.EndAsync();
        Assert.Equal((ServerExit.Done, ""), (ended.Code, ended.Errors));
        // Closed, not dropped: the latest changes are in the book's own file.
        Assert.False(File.Exists(data["foundress.db-wal"]));
        using var store = await BookStore.OpenAsync(data.Path);
        Assert.Equal(2, await store.CheckAsync());
    }

    [Fact]
    public async Task Terminate_WithAConnectionThatSaysNothing_EndsAllTheSame()
    {
        using var data = new TempData();
        await using var server = await ProgramRun.ServerAsync(data.Path);
        using var idle = new TcpClient();
        await idle.ConnectAsync(IPAddress.Loopback, server.Address.Port);
        server.AskToEnd();
        Assert.Equal(ServerExit.Done, (await server.EndAsync()).Code);
    }

    private static async Task NobodyListensAsync(int port)
    {
        while (true)
        {
            using var caller = new TcpClient();
            try
            {
                await caller.ConnectAsync(IPAddress.Loopback, port);
            }
            catch (SocketException)
            {
                return;
            }

            await Task.Delay(20);
        }
    }
}
