using System.Globalization;
using System.Text;
using Foundress.Book.Reporting;
using Foundress.Book.Seasons;
using Foundress.Book.Wording;
using Foundress.Reports.Drawing;
using Foundress.Reports.Wording;

namespace Foundress.Reports.Reporting;

/// <summary>Writes a season's report as plain text in aligned columns, at most 100 characters wide where names allow.</summary>
public static class TextReport
{
    private const int Width = 96;

    /// <summary>The report as text; lines end with a line feed.</summary>
    /// <param name="report">What to write.</param>
    /// <param name="culture">Whose numbers to write; days are ISO 8601 always.</param>
    /// <exception cref="ArgumentException">A number cannot be shown; the message names it.</exception>
    public static string Write(SeasonReport report, CultureInfo culture)
    {
        ReportCheck.Require(report);
        var text = new StringBuilder();
        var title = ReportTexts.FormatTitleOfDays(report.Operation, Say.Day(report.From), Say.Day(report.To));
        Line(text, Clean(title));
        Line(text, new string('=', Math.Min(Width, Clean(title).Length)));
        if (report.Invented)
            Wrap(text, "*** " + ReportWords.Invented + " ***", "");
        Wrap(text, ReportWords.Scale(report, culture), "");
        foreach (var apiary in report.Apiaries)
            Apiary(text, apiary, culture);

        Heading(text, ReportWords.MadeHead);
        Wrap(text, "- " + ReportTexts.FormatLines(report.Lines), "  ");
        foreach (var note in report.Notes)
            Wrap(text, "- " + note, "  ");
        Heading(text, ReportWords.LimitsHead);
        foreach (var limit in ReportWords.Limits)
            Wrap(text, "- " + limit, "  ");
        return text.ToString();
    }

    private static void Apiary(StringBuilder text, ApiaryReport apiary, CultureInfo culture)
    {
        Heading(text, ReportTexts.FormatApiaryHead(apiary.Name, ReportWords.Living(apiary, culture)));
        Wrap(text, apiary.Strip.Sentence, "");

        var season = new TextTable(ReportTexts.When, ReportTexts.What, "", ReportTexts.State);
        foreach (var row in SeasonStripTable.Rows(apiary.Strip, culture))
        {
            if (row.Kind is not (StripRowKind.Jar or StripRowKind.Other))
                season.Add(row.When, row.Subject, Clean(row.Finding), row.State);
        }

        Table(text, ReportTexts.SeasonHead, season);
        var days = new TextTable(
            ReportTexts.Day, ReportTexts.Method, ">" + ReportTexts.Jars, ">" + ReportTexts.Mites, ">" + ReportTexts.Bees, ReportTexts.LevelInterval,
            ">" + ReportTexts.Above, ">" + ReportTexts.Unclear, ">" + ReportTexts.Below);
        foreach (var day in apiary.Days)
        {
            days.Add(Say.Day(day.On), Clean(day.Method), Count(day.Jars, culture), Count(day.Mites, culture), Count(day.Bees, culture),
                ReportWords.Reading(day, culture), Count(day.Over, culture), Count(day.Unclear, culture), Count(day.Below, culture));
        }

        Table(text, ReportTexts.DaysHead, days);
        var jars = new TextTable(
            ReportTexts.Colony, ReportTexts.Day, ReportTexts.Method, ">" + ReportTexts.Mites, ">" + ReportTexts.Bees, ReportTexts.LevelInterval, ReportTexts.Standing);
        foreach (var colony in apiary.Colonies)
        {
            if (colony.Jars.Count == 0)
                jars.Add(Clean(colony.Name), "", ReportTexts.NoJar, "", "", "", colony.Fate is { } end ? Clean(end) : "");
            for (var i = 0; i < colony.Jars.Count; i++)
                Jar(jars, colony, colony.Jars[i], i == 0, culture);
        }

        Table(text, ReportTexts.JarsByColony, jars);
        var others = new TextTable(
            ReportTexts.Colony, ReportTexts.Day, ReportTexts.What, ReportTexts.OwnScale, ReportTexts.From, ReportTexts.AllMites, ReportTexts.Standing);
        foreach (var colony in apiary.Colonies)
        {
            foreach (var other in colony.Others)
            {
                others.Add(Clean(colony.Name), Say.Day(other.On), other.Reading.Method, OtherText.Reading(other.Reading, culture), other.Reading.Counted,
                    OtherText.Total(other.Reading, culture), OtherText.Standing(other.Reading));
            }
        }

        Table(text, ReportWords.OthersHead, others);
    }

    private static void Jar(TextTable table, ColonyReport colony, JarMark jar, bool first, CultureInfo culture)
    {
        var name = first ? Clean(colony.Name) : "";
        if (first && colony.Fate is { } fate)
            name += $" ({Clean(fate)})";
        table.Add(name, Say.Day(jar.On), Clean(jar.Method), Count(jar.Mites, culture), Count(jar.Bees, culture),
            LevelText.Reading(jar.Level, jar.Lower, jar.Upper, culture), Words.Brief(jar.Standing));
    }

    private static void Table(StringBuilder text, string head, TextTable table)
    {
        if (table.IsEmpty)
            return;
        Line(text, "");
        Line(text, head);
        table.Write(text, Width);
    }

    private static void Heading(StringBuilder text, string head)
    {
        Line(text, "");
        Line(text, "");
        Line(text, Clean(head));
        Line(text, new string('-', Math.Min(Width, Clean(head).Length)));
    }

    private static void Wrap(StringBuilder text, string words, string hang)
    {
        var column = 0;
        foreach (var word in Clean(words).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (column > 0 && column + 1 + word.Length > Width)
            {
                text.Append('\n').Append(hang);
                column = hang.Length;
            }
            else if (column > 0)
            {
                text.Append(' ');
                column++;
            }

            text.Append(word);
            column += word.Length;
        }

        text.Append('\n');
    }

    private static void Line(StringBuilder text, string line) => text.Append(line).Append('\n');

    private static string Count(double number, CultureInfo culture) => number.ToString("0", culture);

    // A name with a line break or an escape character must not break the columns or reach a terminal.
    private static string Clean(string text) => string.Create(text.Length, text, static (span, source) =>
    {
        for (var i = 0; i < span.Length; i++)
            span[i] = char.IsControl(source[i]) ? ' ' : source[i];
    });
}
