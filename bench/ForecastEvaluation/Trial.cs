using System.Globalization;
using Foundress.Book.Forecasting;
using Foundress.Knowledge;
using Foundress.Science;

namespace ForecastEvaluation;

/// <summary>
/// The open trial: Aurell, Wall, Bruckner &amp; Williams 2024, J. Insect Sci., DOI 10.5281/zenodo.10612430, CC BY 4.0. The table
/// gives month and day; the year is a placeholder.
/// </summary>
internal sealed record Trial(IReadOnlyList<string> Arms, IReadOnlyList<ForecastColony> Colonies, double Latitude)
{
    // Auburn, Alabama: the place of the authors' laboratory.
    private const double AuburnLatitude = 32.6;

    public static Trial Read(string path, KnowledgeBase knowledge)
    {
        var lines = File.ReadAllLines(path);
        var header = lines[0].Split(',').ToList();
        int colony = header.IndexOf("colony"), arm = header.IndexOf("arm"), day = header.IndexOf("day"), monthDay = header.IndexOf("month_day");
        int mites = header.IndexOf("mites"), bees = header.IndexOf("bees"), adults = header.IndexOf("adult_bees"), brood = header.IndexOf("worker_brood_cells");
        var rows = lines.Skip(1).Select(line => line.Split(',')).Where(cells => cells[mites].Length > 0 && cells[bees].Length > 0);
        List<string> arms = [];
        List<ForecastColony> colonies = [];
        foreach (var group in rows.GroupBy(cells => cells[colony]).OrderBy(group => group.Key, StringComparer.Ordinal))
        {
            var jars = group.Select(cells => new ForecastJar(
                DateOf(cells[monthDay], Whole(cells[day])), "alcohol-wash", Whole(cells[mites]), BeeCount.Uncertain(BeeBasis.Weighed, Whole(cells[bees]), 0.05))).ToArray();
            arms.Add(group.First()[arm]);
            var seen = group.Where(cells => cells[adults].Length > 0 && cells[brood].Length > 0).Select(cells => new ForecastInspection(
                DateOf(cells[monthDay], Whole(cells[day])), Whole(cells[adults]) / knowledge.Bees.Frames.BeesPerFrame.Value, Whole(cells[brood]) / knowledge.Bees.Frames.BroodCellsPerFrame.Value)).ToArray();
            colonies.Add(new ForecastColony(group.Key, jars, seen, Controls(group.First()[arm], jars.Min(jar => jar.On), knowledge)));
        }

        return new Trial(arms, colonies, AuburnLatitude);
    }

    private static List<ForecastControl> Controls(string arm, DateOnly start, KnowledgeBase knowledge)
    {
        ForecastControl Given(string agent, int days) => new(knowledge.Controls.Agents[agent], start, start.AddDays(days));
        return arm switch
        {
            "amitraz strip" => [Given("amitraz-strips", 42)],
            "amitraz strip + thymol gel" => [Given("amitraz-strips", 42), Given("thymol", 28)],
            "amitraz emulsifiable concentrate" => [Given("amitraz-other", 21)],
            _ => throw new InvalidDataException($"The arm '{arm}' is not known."),
        };
    }

    private static DateOnly DateOf(string monthDay, int day)
    {
        var parts = monthDay.Split('-');
        return new DateOnly(day > 100 ? 2022 : 2021, Whole(parts[0]), Whole(parts[1]));
    }

    private static int Whole(string cell) => int.Parse(cell, CultureInfo.InvariantCulture);
}
