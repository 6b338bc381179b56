using System.Diagnostics;

namespace Foundress.ServerForTests;

/// <summary>The server as its own process, on a free port. It can be killed.</summary>
public sealed class ServerProcess : IDisposable, IAsyncDisposable
{
    private readonly Process _process;
    private readonly bool _ownsData;

    private ServerProcess(Process process, string data, bool ownsData, Uri site) => (_process, Data, _ownsData, Site) = (process, data, ownsData, site);

    /// <summary>Where a browser opens it.</summary>
    public Uri Site { get; }

    /// <summary>The same by number: the server listens on IPv4 alone when the port is chosen for it.</summary>
    public Uri Address => new UriBuilder(Site) { Host = "127.0.0.1" }.Uri;

    /// <summary>Its data folder.</summary>
    public string Data { get; }

    /// <summary>Starts it and returns once it says where it is.</summary>
    /// <param name="program">The folder of the program.</param>
    /// <param name="data">The data folder; without it one that is removed afterwards.</param>
    /// <param name="settings">Environment variables.</param>
    /// <param name="more">Further options.</param>
    public static async Task<ServerProcess> StartAsync(string program, string? data, IReadOnlyDictionary<string, string>? settings, params string[] more)
    {
        var folder = data ?? Directory.CreateTempSubdirectory("foundress-data-").FullName;
        var start = new ProcessStartInfo("dotnet", [Path.Combine(program, "Foundress.Server.dll"), "--port", "0", "--data", folder, .. more])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in settings ?? new Dictionary<string, string>())
            start.Environment[name] = value;
        var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.Split(' ').FirstOrDefault(word => word.StartsWith("http://", StringComparison.Ordinal)) is { } site)
                return new ServerProcess(process, folder, data is null, new Uri(site));
        }

        throw new InvalidOperationException($"The server ended without saying where it is:\n{await errors}");
    }

    /// <summary>Ends it as a lost battery does: SIGKILL.</summary>
    public void Kill()
    {
        _process.Kill(entireProcessTree: true);
        _process.WaitForExit();
    }

    public void Dispose()
    {
        if (!_process.HasExited)
            Kill();
        _process.Dispose();
        if (_ownsData)
            Directory.Delete(Data, recursive: true);
    }

    public ValueTask DisposeAsync()
    {
        Dispose();
        return ValueTask.CompletedTask;
    }
}
