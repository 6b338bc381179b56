using System.Globalization;
using Foundress.Book.Judging;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Judging;

namespace Foundress.Book.Reporting;

/// <summary>Gathers what the book says of a stretch of time into a report.</summary>
/// <param name="state">The book.</param>
/// <param name="knowledge">Methods, lines and calendar.</param>
/// <param name="culture">How numbers are written in sentences.</param>
public sealed class ReportBuilder(BookState state, KnowledgeBase knowledge, CultureInfo culture)
{
    private readonly JudgingPolicy _policy = JudgingPolicy.Of(state, knowledge);
    private readonly SeasonStrips _strips = new(state, knowledge, culture);

    /// <summary>Builds the report.</summary>
    /// <param name="from">First day.</param>
    /// <param name="to">Last day, which is also the day the report speaks from.</param>
    /// <param name="invented">Whether the records are an invented demonstration.</param>
    /// <param name="apiary">One apiary only; null for all.</param>
    public SeasonReport Build(DateOnly from, DateOnly to, bool invented, Journal.ApiaryId? apiary = null)
    {
        var apiaries = state.ApiariesByName
            .Where(one => apiary is null || one.Id == apiary)
            .Select(one => Build(one, from, to))
            .ToList();
        return new SeasonReport(
            state.Policy.OperationName ?? ReportTexts.BeeBook, from, to, invented, _policy.Confidence, LinesInWords(to), apiaries, Notes(apiaries));
    }

    private ApiaryReport Build(Apiary apiary, DateOnly from, DateOnly to)
    {
        var colonies = state.Colonies.Values
            .Where(colony => colony.Stays.Any(stay => stay.Apiary == apiary.Id))
            .OrderBy(colony => colony.Name, NaturalOrder.Instance)
            .Select(colony => new ColonyReport(
                colony.Id, colony.Name, Fate(colony, to),
                [.. _strips.Marks(colony, from, to).Where(mark => colony.ApiaryOn(mark.On) == apiary.Id)])
            {
                Others = [.. _strips.Others(colony, from, to).Where(mark => colony.ApiaryOn(mark.On) == apiary.Id)],
            })
            .ToList();
        return new ApiaryReport(
            apiary.Name, state.ColoniesIn(apiary.Id, to).Count, _strips.Of(apiary, to),
            Days(apiary, [.. colonies.SelectMany(colony => colony.Jars)]), colonies);
    }

    private List<DayTotal> Days(Apiary apiary, IReadOnlyList<JarMark> marks) =>
        [.. marks
            .GroupBy(mark => (mark.On, mark.Method))
            .OrderBy(group => group.Key.On).ThenBy(group => group.Key.Method, StringComparer.Ordinal)
            .Select(group => Total(apiary, group.Key.On, group.Key.Method, [.. group]))];

    private DayTotal Total(Apiary apiary, DateOnly on, string method, List<JarMark> marks)
    {
        var mites = marks.Sum(mark => mark.Mites);
        var bees = marks.Sum(mark => mark.Bees);
        var level = ApiaryLevel(apiary, on, marks);
        return new DayTotal(
            on, method, marks.Count, mites, bees, 100d * mites / bees, level?.Lower.Per100Bees, level?.Upper.Per100Bees,
            marks.Count(mark => mark.Standing == Standing.Above),
            marks.Count(mark => mark.Standing == Standing.Unclear),
            marks.Count(mark => mark.Standing == Standing.Below));
    }

    // One colony says nothing of how much colonies differ, so it gives no interval for the apiary.
    private LevelInterval? ApiaryLevel(Apiary apiary, DateOnly on, List<JarMark> marks)
    {
        var byColony = marks.GroupBy(mark => mark.Colony).ToList();
        if (byColony.Count < 2)
            return null;
        var sampled = byColony.Select(group => new ColonyJars(
            group.Key.ToString(),
            [.. group.Select(mark => state.JarsOf(mark.Colony).First(jar => jar.Id == mark.Jar)).Select(jar => new JarCount(jar.Facts.Mites, jar.Facts.Bees.AsBeeCount))])).ToList();
        var unsampled = state.ColoniesIn(apiary.Id, on).Count(colony => byColony.All(group => group.Key != colony.Id));
        return ApiaryPosterior.FromJars(sampled, unsampled).MeanInterval(_policy.Confidence);
    }

    private string LinesInWords(DateOnly day)
    {
        if (_policy.On(null, day) is not { } lines)
            return ReportTexts.NoLines;
        var act = Say.Line(lines.Deciding, culture);
        return lines.Watch is { } watch
            ? ReportTexts.FormatLinesWithWatch(lines.Title, Say.Line(watch, culture), act, Units.Name(lines.Unit), lines.Source)
            : ReportTexts.FormatLines(lines.Title, act, Units.Name(lines.Unit), lines.Source);
    }

    private List<string> Notes(List<ApiaryReport> apiaries)
    {
        var notes = new List<string>
        {
            ReportTexts.FormatNoteLevels(Say.Percent(_policy.Confidence, culture)),
            ReportTexts.FormatNoteStandings(Say.InHundred(_policy.Certainty.SureBelow, culture), Say.InHundred(_policy.Certainty.SureAbove, culture)),
            ReportTexts.NoteApiary,
        };
        var assumed = state.Jars.Count(jar => jar.Facts.Bees.Basis != BeeBasis.Counted);
        if (assumed > 0)
            notes.Add(Plural.Pick(assumed, ReportTexts.FormatNoteAssumed(assumed)));
        if (apiaries.Any(apiary => apiary.Colonies.Any(colony => colony.Others.Count > 0)))
            notes.Add(ReportTexts.NoteOtherScales);
        if (state.Unreadable.Count is > 0 and var unreadable)
            notes.Add(Plural.Pick(unreadable, ReportTexts.FormatNoteUnreadable(unreadable)));
        if (state.LooseJars.Count() is > 0 and var loose)
            notes.Add(Plural.Pick(loose, ReportTexts.FormatNoteLooseJars(loose)));
        if (apiaries.Count == 0)
            notes.Add(ReportTexts.NoteNoApiary);
        return notes;
    }

    private static string? Fate(Colony colony, DateOnly to) => colony.End is not { } end || end.On > to
        ? null
        : end.Fate == ColonyFate.Died ? ReportTexts.FormatDied(Say.Day(end.On)) : ReportTexts.FormatUnited(Say.Day(end.On));
}
