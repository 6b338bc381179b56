using System.Diagnostics;

namespace Foundress.Browser.Tests;

/// <summary>The published server itself, on a free port, with an empty data folder of its own.</summary>
public sealed class ServerProcess : IAsyncDisposable
{
    private readonly Process _process;
    private readonly string _data;

    private ServerProcess(Process process, string data, string address) => (_process, _data, Address) = (process, data, address);

    /// <summary>Its data folder.</summary>
    public string Data => _data;

    /// <summary>Where it listens.</summary>
    public string Address { get; }

    public static async Task<ServerProcess> StartAsync(string folder, params string[] more)
    {
        var data = Directory.CreateTempSubdirectory("foundress-data-").FullName;
        var process = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(folder, "Foundress.Server.dll"), "--port", "0", "--data", data, .. more])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var errors = process.StandardError.ReadToEndAsync();
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.Split(' ').FirstOrDefault(word => word.StartsWith("http://", StringComparison.Ordinal)) is { } address)
                return new ServerProcess(process, data, address.TrimEnd('/'));
        }

        throw new InvalidOperationException($"The server ended without saying where it is:\n{await errors}");
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
            _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        _process.Dispose();
        Directory.Delete(_data, recursive: true);
    }
}
