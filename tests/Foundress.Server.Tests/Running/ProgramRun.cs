using System.Diagnostics;
using System.Text;

namespace Foundress.Server.Tests.Running;

/// <summary>One of our programs as the keeper runs it: a process of its own, what it writes, and how it ends.</summary>
internal sealed class ProgramRun : IAsyncDisposable
{
    private readonly Process _process;
    private readonly StringBuilder _output = new();
    private readonly TaskCompletionSource<Uri> _address = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Task _read;
    private readonly Task<string> _errors;

    private ProgramRun(Process process)
    {
        _process = process;
        _errors = process.StandardError.ReadToEndAsync();
        _read = ReadAsync();
    }

    /// <summary>Where the server answers.</summary>
    public Uri Address { get; private set; } = null!;

    /// <summary>Starts the server and waits until it says where it is.</summary>
    public static async Task<ProgramRun> ServerAsync(string data, IReadOnlyDictionary<string, string>? settings = null, params string[] args)
    {
        var run = Start("Foundress.Server", "Foundress.Server.dll", settings, ["--port", "0", "--data", data, .. args]);
        if (await Task.WhenAny(run._address.Task, run._read) == run._read && !run._address.Task.IsCompleted)
            throw new InvalidOperationException($"The server ended without saying where it is:\n{await run._errors}");
        var port = (await run._address.Task).Port;
        // The server listens on IPv4 alone when the port is chosen for it.
        run.Address = new Uri($"http://127.0.0.1:{port}/");
        return run;
    }

    /// <summary>Runs the server's program to its end.</summary>
    public static Task<Ended> ServerToEndAsync(params string[] args) => Start("Foundress.Server", "Foundress.Server.dll", null, args).EndAsync();

    /// <summary>Runs the command line to its end.</summary>
    public static Task<Ended> CommandAsync(params string[] args) => Start("Foundress.Cli", "foundress.dll", null, args).EndAsync();

    /// <summary>Asks it to end, as a service manager does.</summary>
    public void AskToEnd()
    {
        using var kill = Process.Start(new ProcessStartInfo("sh") { ArgumentList = { "-c", $"kill -TERM {_process.Id}" } })!;
        kill.WaitForExit();
        Assert.Equal(0, kill.ExitCode);
    }

    /// <summary>Waits for its end.</summary>
    public async Task<Ended> EndAsync()
    {
        await _process.WaitForExitAsync();
        await _read;
        return new(_process.ExitCode, _output.ToString(), await _errors);
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
            _process.Kill(entireProcessTree: true);
        await EndAsync();
        _process.Dispose();
    }

    private static ProgramRun Start(string project, string file, IReadOnlyDictionary<string, string>? settings, string[] args)
    {
        // Beside this test's own output, whatever the configuration.
        var folder = AppContext.BaseDirectory.Replace("Foundress.Server.Tests", project, StringComparison.Ordinal);
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(Path.Combine(folder, file));
        foreach (var arg in args)
            start.ArgumentList.Add(arg);
        foreach (var (name, value) in settings ?? new Dictionary<string, string>())
            start.Environment[name] = value;
        return new ProgramRun(Process.Start(start)!);
    }

    private async Task ReadAsync()
    {
        while (await _process.StandardOutput.ReadLineAsync() is { } line)
        {
            _output.AppendLine(line);
            if (line.Split(' ').FirstOrDefault(word => word.StartsWith("http://", StringComparison.Ordinal)) is { } address)
                _address.TrySetResult(new Uri(address));
        }
    }

    /// <summary>What a program that has ended left behind.</summary>
    internal sealed record Ended(int Code, string Output, string Errors);
}
