using System.Globalization;
using Foundress.Book.Forecasts;
using Foundress.Book.Seasons;
using Foundress.Book.Wording;
using Foundress.Reports.Wording;

namespace Foundress.Reports.Drawing;

/// <summary>The content of a strip as rows: a row for each mark that the picture shows.</summary>
public static class SeasonStripTable
{
    /// <summary>The column heads, in the order of <see cref="StripRow"/>'s texts: When, Subject, Finding, Basis, State.</summary>
    public static IReadOnlyList<string> Heads => [DrawingTexts.HeadWhen, DrawingTexts.HeadWhat, DrawingTexts.HeadFinding, DrawingTexts.HeadFrom, DrawingTexts.HeadState];

    /// <summary>The rows by day; on one day phases come first, then lines, dues, jars and counts on other scales.</summary>
    /// <param name="strip">The strip.</param>
    /// <param name="culture">Whose numbers to write.</param>
    /// <exception cref="ArgumentException">The strip holds a value that cannot be shown; the message names it.</exception>
    public static IReadOnlyList<StripRow> Rows(SeasonStrip strip, CultureInfo culture)
    {
        StripCheck.Require(strip);
        var rows = new List<(StripRow Row, int Order)>();
        foreach (var span in strip.Phases)
            Add(new(StripRowKind.Phase, span.From, null, LevelText.Days(span.From, span.LastDay), DrawingTexts.SubjectSeason, Words.Of(span.Phase), "", ""));
        foreach (var step in strip.Lines)
            Add(new(StripRowKind.Line, step.From, null, LevelText.Days(step.From, step.To), DrawingTexts.SubjectLines, Lines(step, culture), "", ""));
        foreach (var due in strip.Dues)
            Add(new(StripRowKind.Due, due.On, null, Say.Day(due.On), DrawingTexts.SubjectDue, due.Text, DrawingTexts.FormatWindow(LevelText.Days(due.From, due.To)), StateOf(due)));
        foreach (var bar in strip.Controls)
            Add(new(StripRowKind.Control, bar.From, null, LevelText.Days(bar.From, bar.To), DrawingTexts.SubjectControl, ControlLane.Words(bar), "", bar.Open ? DrawingTexts.AtWork : DrawingTexts.Over));
        foreach (var jar in JarMarks.InOrder(strip.Jars))
        {
            Add(new(StripRowKind.Jar, jar.On, jar.Jar, Say.Day(jar.On), jar.ColonyName,
                LevelText.Reading(jar.Level, jar.Lower, jar.Upper, culture), BasisOf(jar, culture), Words.Of(jar.Standing)));
        }

        foreach (var other in strip.Others)
        {
            Add(new(StripRowKind.Other, other.On, null, Say.Day(other.On), other.ColonyName,
                OtherText.Reading(other.Reading, culture), DrawingTexts.FormatMethodCounted(Midway.Name(other.Reading.Method, culture), other.Reading.Counted), OtherText.Standing(other.Reading)));
        }

        foreach (var point in Months(strip))
        {
            Add(new(StripRowKind.Forecast, point.On, null, Say.Day(point.On), DrawingTexts.SubjectForecast,
                LevelText.Reading(point.Middle, point.Low, point.High, culture), DrawingTexts.NineInTen, ""));
        }

        rows.Sort(static (left, right) =>
        {
            var order = left.Row.From.CompareTo(right.Row.From);
            if (order == 0)
                order = left.Row.Kind.CompareTo(right.Row.Kind);
            return order != 0 ? order : left.Order.CompareTo(right.Order);
        });
        return rows.ConvertAll(static row => row.Row);

        void Add(StripRow row) => rows.Add((row, rows.Count));
    }

    // A row every two weeks or so says as much as the picture shows.
    private static IEnumerable<FanPoint> Months(SeasonStrip strip)
    {
        DateOnly? last = null;
        foreach (var point in strip.Fan)
        {
            if (point.On < strip.Today || point.On > strip.To || (last is { } before && point.On < before.AddDays(14)))
                continue;
            last = point.On;
            yield return point;
        }
    }

    /// <summary>Whether something due is done, in words.</summary>
    internal static string StateOf(DueMark due) => due.Done ? DrawingTexts.Done : due.Overdue ? DrawingTexts.Overdue : DrawingTexts.ToDo;

    /// <summary>What a jar's level rests on.</summary>
    internal static string BasisOf(JarMark jar, CultureInfo culture) =>
        Plural.Pick(jar.Mites, DrawingTexts.FormatBasis(jar.Mites.ToString("0", culture), jar.Bees.ToString("0", culture), jar.Method));

    private static string Lines(LineStep step, CultureInfo culture) => step.Watch is { } watch
        ? DrawingTexts.FormatWatchAndAct(LevelText.Line(watch, culture), LevelText.Line(step.Act, culture))
        : DrawingTexts.FormatActAbove(LevelText.Line(step.Act, culture));
}
