using System.Globalization;
using Foundress.Science.Estimation;
using Foundress.Science;

namespace Foundress.Reference.Tests.Estimation.Apiary;

/// <summary>
/// The open trial: Aurell, Wall, Bruckner &amp; Williams 2024, J. Insect Sci., DOI 10.5281/zenodo.10612430, CC BY 4.0. Its table is not
/// part of this repository: tests that need it are skipped without it.
/// </summary>
internal static class TrialData
{
    public const string Reason =
        "The open trial's table is not here: set FOUNDRESS_TRIAL_DATA to its path, or put it at shared/data/autumn-trial.csv beside the repository.";

    public static string? Path { get; } = FindPath();

    public static List<ColonyJars> Arm(string arm, int day)
    {
        Assert.SkipWhen(Path is null, Reason);
        string[] lines = File.ReadAllLines(Path!);
        string[] header = lines[0].Split(',');
        int colony = Array.IndexOf(header, "colony");
        int arms = Array.IndexOf(header, "arm");
        int days = Array.IndexOf(header, "day");
        int mites = Array.IndexOf(header, "mites");
        int bees = Array.IndexOf(header, "bees");
        List<ColonyJars> jars = [];
        foreach (string line in lines.Skip(1))
        {
            string[] cells = line.Split(',');
            if (cells[arms] == arm && Whole(cells[days]) == day && cells[mites].Length > 0 && cells[bees].Length > 0)
                jars.Add(new(cells[colony], [new JarCount(Whole(cells[mites]), BeeCount.Counted(Whole(cells[bees])))]));
        }

        return jars;
    }

    private static int Whole(string cell) => int.Parse(cell, NumberStyles.Integer, CultureInfo.InvariantCulture);

    private static string? FindPath()
    {
        string? named = Environment.GetEnvironmentVariable("FOUNDRESS_TRIAL_DATA");
        if (!string.IsNullOrEmpty(named))
            return File.Exists(named) ? named : null;
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string path = System.IO.Path.Combine(folder.FullName, "shared", "data", "autumn-trial.csv");
            if (File.Exists(path))
                return path;
        }

        return null;
    }
}
