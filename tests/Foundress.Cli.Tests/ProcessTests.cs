using System.Diagnostics;

namespace Foundress.Cli.Tests;

/// <summary>The built program as a process: what a script sees.</summary>
public sealed class ProcessTests : IDisposable
{
    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    [Fact]
    public async Task Jar_Json_GoesToStandardOutputAlone()
    {
        var (code, output, error) = await RunAsync("jar", "--mites", "14", "--bees", "320", "--line", "3", "--json");
        Assert.Equal((0, ""), (code, error));
        using var json = System.Text.Json.JsonDocument.Parse(output);
        Assert.Equal(4.375, json.RootElement.GetProperty("level").GetDouble(), 12);
    }

    [Fact]
    public async Task Jar_BadValue_GoesToStandardErrorWithCodeTwo()
    {
        var (code, output, error) = await RunAsync("jar", "--mites", "x", "--bees", "320");
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("--mites 'x'", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_SomeRejected_GivesCodeOne()
    {
        var file = _scene.Write("jars.csv", "apiary;colony;date;method;mites;bees\r\nSüd;1;2024-07-01;alcohol-wash;4;310\r\nSüd;2;2024-07-01;alcohol-wash;4;0\r\n");
        var (code, output, error) = await RunAsync("import", "jars", file, "--data", _scene.Data);
        Assert.Equal(1, code);
        Assert.StartsWith("1 jar imported", output, StringComparison.Ordinal);
        Assert.Contains("row 3: bees '0'", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Jar_SystemInGerman_SpeaksGermanWithItsNumbers()
    {
        var (code, output, error) = await RunInAsync("de_DE.UTF-8", "jar", "--mites", "14", "--bees", "320");
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("4,4 Milben je 100 Bienen", output, StringComparison.Ordinal);
    }

    // A slim system has no data of any culture; the texts and their language come with the program.
    [Fact]
    public async Task Jar_SystemWithoutCultures_SpeaksGermanWhenAsked()
    {
        var (code, output, error) = await RunInAsync("C.UTF-8", [("DOTNET_SYSTEM_GLOBALIZATION_INVARIANT", "1")], "jar", "--mites", "14", "--bees", "320", "--language", "de");
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("14 Milben auf 320 Bienen", output, StringComparison.Ordinal);
    }

    private Task<(int Code, string Output, string Error)> RunAsync(params string[] args) => RunInAsync("C.UTF-8", args);

    private Task<(int Code, string Output, string Error)> RunInAsync(string system, params string[] args) => RunInAsync(system, [], args);

    private async Task<(int Code, string Output, string Error)> RunInAsync(string system, (string Name, string Value)[] variables, params string[] args)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "foundress.dll"), .. args])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = _scene.Folder,
        };
        // Whoever runs the tests has a language too.
        foreach (var name in new[] { "LC_ALL", "LC_MESSAGES", "LANGUAGE", "FOUNDRESS_LANGUAGE" })
            start.Environment.Remove(name);
        start.Environment["LANG"] = system;
        foreach (var (name, value) in variables)
            start.Environment[name] = value;
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, await output, await error);
    }
}
