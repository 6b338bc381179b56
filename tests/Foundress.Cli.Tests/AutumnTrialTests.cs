using System.Diagnostics;
using Foundress.Science;

namespace Foundress.Cli.Tests;

/// <summary>
/// Real input: the open autumn trial (Aurell, Wall, Bruckner &amp; Williams 2024, DOI 10.5281/zenodo.10612430, CC BY 4.0)
/// through the conversion script and the import. The data are not part of this repository.
/// </summary>
public sealed class AutumnTrialTests : IDisposable
{
    private const string Variable = "FOUNDRESS_TRIAL_DATA";

    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    /// <summary>Outside check: arm totals in mites per 100 bees at days 0, 21, 42 and 138, added up from the published table.</summary>
    [Fact]
    public async Task Import_AutumnTrial_GivesTheArmTotals()
    {
        var root = Root();
        var data = Environment.GetEnvironmentVariable(Variable) ?? Path.Combine(root, "..", "shared", "data", "autumn-trial.csv");
        Assert.SkipUnless(File.Exists(data), $"The trial table is not here ({data}): set {Variable} to its path. It is published as DOI 10.5281/zenodo.10612430.");
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The conversion script needs bash and awk.");
        var jars = _scene.Write("jars.csv", await ConvertAsync(root, data));

        Assert.Equal(0, await _scene.RunOnBookAsync("import", "jars", jars, "--json"));
        Assert.Equal((175, 3, 47), (Number("new"), Number("newApiaries"), Number("newColonies")));
        var state = (await _scene.LedgerAsync()).State;
        Assert.All(state.Jars, jar => Assert.Equal(BeeBasis.Weighed, jar.Facts.Bees.Basis));
        var totals = state.ApiariesByName.ToDictionary(
            arm => arm.Name,
            arm => state.Jars.Where(jar => state.Colonies[jar.Colony!.Value].Apiary == arm.Id)
                .GroupBy(jar => jar.Facts.Note)
                .OrderBy(day => day.Min(jar => jar.Facts.On))
                .Select(day => Math.Round(100d * day.Sum(jar => jar.Facts.Mites) / day.Sum(jar => jar.Facts.Bees.Count), 2))
                .ToArray());
        Assert.Equal([11.15, 1.91, 3.58, 1.08], totals["amitraz strip"]);
        Assert.Equal([11.05, 1.09, 2.01, 0.28], totals["amitraz strip + thymol gel"]);
        Assert.Equal([11.04, 0.34, 4.39, 0.50], totals["amitraz emulsifiable concentrate"]);
    }

    private int Number(string name) => _scene.Json().GetProperty(name).GetInt32();

    private static async Task<string> ConvertAsync(string root, string data)
    {
        var start = new ProcessStartInfo("bash", [Path.Combine(root, "tools", "autumn-trial.sh"), data]) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var text = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, await error);
        return text;
    }

    private static string Root()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "Foundress.slnx")))
            at = at.Parent;
        return at?.FullName ?? throw new InvalidOperationException("These tests run from within a clone.");
    }
}
