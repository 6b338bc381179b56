using System.Text.Json;
using Foundress.Book.Judging;
using Foundress.Book.Reporting;
using Foundress.Book.Seasons;
using Foundress.Book.Wording;
using Foundress.Reports.Reporting.Json;
using Foundress.Science.Judging;

namespace Foundress.Reports.Reporting;

/// <summary>
/// Writes a season's report as JSON. Names are camelCase and carry their unit (<c>levelPer100</c> is mites per 100 bees);
/// days are ISO 8601; numbers are unrounded. The records in <c>Reporting/Json</c> say what each field means.
/// </summary>
public static class JsonReport
{
    /// <summary>The report as indented JSON.</summary>
    /// <exception cref="ArgumentException">A number cannot be shown; the message names it.</exception>
    public static string Write(SeasonReport report)
    {
        ReportCheck.Require(report);
        var json = new ReportJson(
            "foundress-season-report", 1, report.Operation, Day(report.From), Day(report.To), report.Invented, report.Confidence,
            report.Lines, [.. report.Notes], [.. ReportWords.Limits], Each(report.Apiaries, Apiary));
        return JsonSerializer.Serialize(json, ReportJsonContext.Default.ReportJson);
    }

    private static ApiaryJson Apiary(ApiaryReport apiary) => new(
        apiary.Name, apiary.LivingColonies, Season(apiary.Strip), Each(apiary.Days, Total), Each(apiary.Colonies, Colony));

    private static SeasonJson Season(SeasonStrip strip) => new(
        Day(strip.From), Day(strip.To), Day(strip.Today), strip.Sentence,
        Each(strip.Phases, static span => new PhaseJson(Day(span.From), Day(span.LastDay), Name(span.Phase))),
        Each(strip.Lines, static line => new LineJson(Day(line.From), Day(line.To), line.Watch, line.Act)),
        Each(strip.Dues, static due => new DueJson(Day(due.On), Day(due.From), Day(due.To), due.Text, due.Done ? "done" : due.Overdue ? "overdue" : "toDo")),
        Each(strip.Jars, Jar));

    private static DayJson Total(DayTotal day) => new(
        Day(day.On), day.Method, day.Jars, day.Mites, day.Bees, day.Level, day.Lower, day.Upper, day.Over, day.Unclear, day.Below);

    private static ColonyJson Colony(ColonyReport colony) => new(colony.Colony.ToString(), colony.Name, colony.Fate, Each(colony.Jars, Jar), Each(colony.Others, Other));

    private static JarJson Jar(JarMark jar) => new(
        jar.Jar.ToString(), jar.Colony.ToString(), jar.ColonyName, Day(jar.On), jar.Method, jar.Mites, jar.Bees,
        jar.Level, jar.Lower, jar.Upper, Name(jar.Standing));

    private static OtherJson Other(OtherMark other)
    {
        var reading = other.Reading;
        return new OtherJson(
            other.Entry.ToString(), Day(other.On),
            reading.Kind switch { OtherKind.NaturalFall => "naturalFall", OtherKind.DroneBrood => "droneBrood", _ => "workerBrood" },
            reading.Unit, reading.Rate.Value, reading.Rate.Lower, reading.Rate.Upper, reading.Counted, [.. reading.Voids],
            reading.Total?.Lowest, reading.Total?.Highest, Name(reading.Standing));
    }

    private static string? Name(Standing? standing) => standing switch
    {
        Standing.Below => "below",
        Standing.Unclear => "unclear",
        Standing.Above => "above",
        _ => null,
    };

    private static string Name(SeasonPhase phase) => phase switch
    {
        SeasonPhase.DormantBroodless => "dormantBroodless",
        SeasonPhase.DormantWithBrood => "dormantWithBrood",
        SeasonPhase.Increase => "increase",
        SeasonPhase.Peak => "peak",
        _ => "decrease",
    };

    private static string Day(DateOnly day) => Say.IsoDay(day);

    private static TTo[] Each<TFrom, TTo>(IReadOnlyList<TFrom> from, Func<TFrom, TTo> make)
    {
        var to = new TTo[from.Count];
        for (var i = 0; i < to.Length; i++)
            to[i] = make(from[i]);
        return to;
    }
}
