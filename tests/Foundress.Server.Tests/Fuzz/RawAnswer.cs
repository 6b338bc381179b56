using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace Foundress.Server.Tests.Fuzz;

/// <summary>An answer as it came over the line, to a request that need not be one.</summary>
/// <param name="Status">The status; 0 when the server closed the line without a word.</param>
/// <param name="Headers">The headers, by name.</param>
/// <param name="Body">What followed, as text.</param>
internal sealed record RawAnswer(int Status, IReadOnlyDictionary<string, string> Headers, string Body)
{
    // Not a matter of speed: a server that has not answered by then hangs.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private static readonly RawAnswer None = new(0, new Dictionary<string, string>(), "");

    /// <summary>Sends a whole request and reads its answer.</summary>
    public static Task<RawAnswer> ToRequestAsync(int port, byte[] request) => ToAsync(port, request, isWhole: true);

    /// <summary>Sends bytes that may be no request, says that no more will come, and reads what comes until the end of the line.</summary>
    public static Task<RawAnswer> ToBytesAsync(int port, byte[] bytes) => ToAsync(port, bytes, isWhole: false);

    private static async Task<RawAnswer> ToAsync(int port, byte[] request, bool isWhole)
    {
        using var caller = new TcpClient();
        await caller.ConnectAsync(IPAddress.Loopback, port);
        var stream = caller.GetStream();
        using var late = new CancellationTokenSource(Patience);
        var kept = new List<byte>();
        var isHead = request.AsSpan().StartsWith("HEAD "u8);
        try
        {
            await stream.WriteAsync(request, late.Token);
            if (!isWhole)
                caller.Client.Shutdown(SocketShutdown.Send);
            var part = new byte[64 * 1024];
            while (await stream.ReadAsync(part, late.Token) is var read and > 0)
            {
                kept.AddRange(part.AsSpan(0, read));
                if (isWhole && Parse([.. kept], isHead) is { } answer)
                    return answer;
            }
        }
        catch (IOException)
        {
            // The server may refuse before it has read all; what it said before counts.
        }

        return Parse([.. kept], isHead) ?? None;
    }

    // Null while something of it is still to come.
    private static RawAnswer? Parse(byte[] bytes, bool isHead)
    {
        var split = bytes.AsSpan().IndexOf("\r\n\r\n"u8);
        if (split < 0)
            return null;
        var lines = Encoding.Latin1.GetString(bytes, 0, split).Split("\r\n");
        var status = int.Parse(lines[0].Split(' ')[1], CultureInfo.InvariantCulture);
        var body = bytes[(split + 4)..];
        if (status < 200)
            return Parse(body, isHead);
        var headers = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (var line in lines.Skip(1))
        {
            var colon = line.IndexOf(':', StringComparison.Ordinal);
            headers[line[..colon]] = line[(colon + 1)..].Trim();
        }

        if (isHead || status is 204 or 304)
            return new(status, headers, "");
        if (headers.GetValueOrDefault("Transfer-Encoding") == "chunked")
            return Joined(body) is { } whole ? new(status, headers, Encoding.UTF8.GetString(whole)) : null;
        var length = int.Parse(headers.GetValueOrDefault("Content-Length") ?? "0", CultureInfo.InvariantCulture);
        return body.Length >= length ? new(status, headers, Encoding.UTF8.GetString(body, 0, length)) : null;
    }

    private static byte[]? Joined(byte[] chunks)
    {
        var whole = new List<byte>();
        var at = 0;
        while (chunks.AsSpan(at).IndexOf("\r\n"u8) is var line and >= 0)
        {
            var size = int.Parse(Encoding.ASCII.GetString(chunks, at, line), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
            at += line + 2;
            if (size == 0)
                return [.. whole];
            if (at + size + 2 > chunks.Length)
                return null;
            whole.AddRange(chunks.AsSpan(at, size));
            at += size + 2;
        }

        return null;
    }
}
