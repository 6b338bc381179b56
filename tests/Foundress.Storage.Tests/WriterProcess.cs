using System.Diagnostics;

namespace Foundress.Storage.Tests;

/// <summary>Another program that writes in a book for ever, and what it was told to be safe.</summary>
internal sealed class WriterProcess : IDisposable
{
    private readonly Process _process;
    private readonly Task _reading;
    private readonly List<Guid> _acknowledged = [];

    private WriterProcess(Process process)
    {
        _process = process;
        _reading = ReadAsync();
    }

    public bool HasEnded => _process.HasExited;

    public int Count
    {
        get
        {
            lock (_acknowledged)
                return _acknowledged.Count;
        }
    }

    public static WriterProcess Start(string folder, string device, string? database)
    {
        // Beside this test's own output, whatever the configuration.
        var writer = AppContext.BaseDirectory.Replace("Foundress.Storage.Tests", "Foundress.Storage.Writer", StringComparison.Ordinal);
        var start = new ProcessStartInfo("dotnet")
        {
            ArgumentList = { Path.Combine(writer, "Foundress.Storage.Writer.dll"), folder, device },
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["FOUNDRESS_DATABASE"] = database;
        return new WriterProcess(Process.Start(start)!);
    }

    /// <summary>Waits until writers have been told of some more entries together, or have ended.</summary>
    public static async Task UntilAsync(int count, params WriterProcess[] writers)
    {
        while (writers.Sum(writer => writer.Count) < count && !Array.TrueForAll(writers, writer => writer.HasEnded))
            await Task.Delay(Random.Shared.Next(1, 10));
        if (writers.Sum(writer => writer.Count) < count)
            Assert.Fail("The writers ended early: " + string.Concat(await Task.WhenAll(writers.Select(writer => writer._process.StandardError.ReadToEndAsync()))));
    }

    /// <summary>Kills it (SIGKILL) where it runs.</summary>
    /// <returns>The ids it was told to be safe.</returns>
    public async Task<IReadOnlyCollection<Guid>> KillAsync()
    {
        _process.Kill();
        await _reading;
        return _acknowledged;
    }

    /// <summary>Waits until it ends by itself.</summary>
    /// <returns>The ids it was told to be safe.</returns>
    public async Task<IReadOnlyCollection<Guid>> EndAsync()
    {
        await _reading;
        return _acknowledged;
    }

    public void Dispose()
    {
        if (!_process.HasExited)
            _process.Kill();
        _process.Dispose();
    }

    // A last line that the kill cut short is no acknowledgement.
    private async Task ReadAsync()
    {
        while (await _process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (!Guid.TryParseExact(line, "D", out var id))
                continue;
            lock (_acknowledged)
                _acknowledged.Add(id);
        }
    }
}
