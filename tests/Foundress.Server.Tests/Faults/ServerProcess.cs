using System.Diagnostics;

namespace Foundress.Server.Tests.Faults;

/// <summary>The server as its own process, which can be killed.</summary>
internal sealed class ServerProcess : IDisposable
{
    private readonly Process _process;

    private ServerProcess(Process process, Uri address) => (_process, Address) = (process, address);

    public Uri Address { get; }

    /// <summary>Starts it on a free port and returns once it says where it is.</summary>
    public static async Task<ServerProcess> StartAsync(string data, params string[] more)
    {
        // Beside this test's own output, whatever the configuration.
        var folder = AppContext.BaseDirectory.Replace("Foundress.Server.Tests", "Foundress.Server", StringComparison.Ordinal);
        var process = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(folder, "Foundress.Server.dll"), "--port", "0", "--data", data, .. more])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var errors = process.StandardError.ReadToEndAsync();
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            // The server listens on IPv4 alone when the port is chosen for it.
            if (line.Split(' ').FirstOrDefault(word => word.StartsWith("http://", StringComparison.Ordinal)) is { } address)
                return new ServerProcess(process, new UriBuilder(address) { Host = "127.0.0.1" }.Uri);
        }

        throw new InvalidOperationException($"The server ended without saying where it is:\n{await errors}");
    }

    /// <summary>Ends it as a lost battery does: SIGKILL.</summary>
    public void Kill()
    {
        _process.Kill();
        _process.WaitForExit();
    }

    public void Dispose()
    {
        if (!_process.HasExited)
            Kill();
        _process.Dispose();
    }
}
