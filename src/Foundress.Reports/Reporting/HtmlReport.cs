using System.Globalization;
using Foundress.Book.Reporting;
using Foundress.Book.Seasons;
using Foundress.Book.Wording;
using Foundress.Reports.Drawing;
using Foundress.Reports.Wording;

namespace Foundress.Reports.Reporting;

/// <summary>
/// Writes a season's report as one HTML page that needs nothing else: no script, no outside file; it reads on a phone, a
/// laptop and on A4 or US letter paper.
/// </summary>
public static class HtmlReport
{
    /// <summary>The report as an HTML document.</summary>
    /// <param name="report">What to write.</param>
    /// <param name="culture">Whose numbers and month names to write; days in tables are ISO 8601 always.</param>
    /// <exception cref="ArgumentException">A number cannot be shown; the message names it.</exception>
    public static string Write(SeasonReport report, CultureInfo culture)
    {
        ReportCheck.Require(report);
        var page = new Html();
        page.Raw($"<!doctype html>\n<html lang=\"{Languages.Current.Code}\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"color-scheme\" content=\"light dark\">\n");
        page.Element("title", ReportTexts.FormatPageTitle(report.Operation, Say.Day(report.From), Say.Day(report.To)));
        page.Raw("<style>\n").Raw(Stylesheet.Strip).Raw(Stylesheet.Report).Raw("</style>\n</head>\n<body>\n<header>\n");
        page.Element("h1", report.Operation);
        page.Element("p", WordTexts.FormatFromTo(Say.Day(report.From), Say.Day(report.To)), "span");
        if (report.Invented)
            page.Element("p", ReportWords.Invented, "invented");
        page.Element("p", ReportWords.Scale(report, culture));
        page.Raw("<figure class=\"key\">\n");
        Both(page, shape => KeyDrawing.Draw("key-" + Suffix(shape), shape));
        page.Raw("</figure>\n</header>\n<main>\n");
        for (var i = 0; i < report.Apiaries.Count; i++)
            Apiary(page, report.Apiaries[i], string.Create(CultureInfo.InvariantCulture, $"apiary-{i + 1}"), culture);
        page.Raw("</main>\n<footer>\n<section>\n");
        page.Element("h2", ReportWords.MadeHead).Raw("<ul>\n").Element("li", ReportTexts.FormatLines(report.Lines));
        foreach (var note in report.Notes)
            page.Element("li", note);
        page.Raw("</ul>\n</section>\n<section>\n").Element("h2", ReportWords.LimitsHead).Raw("<ul>\n");
        foreach (var limit in ReportWords.Limits)
            page.Element("li", limit);
        return page.Raw("</ul>\n</section>\n</footer>\n</body>\n</html>\n").ToString();
    }

    private static void Apiary(Html page, ApiaryReport apiary, string id, CultureInfo culture)
    {
        page.Raw("<section class=\"apiary\">\n");
        page.Element("h2", ReportTexts.FormatApiaryHead(apiary.Name, ReportWords.Living(apiary, culture)));
        page.Element("p", apiary.Strip.Sentence, "sentence");
        page.Raw("<figure>\n");
        Both(page, shape => SeasonStripDrawing.Draw(apiary.Strip, $"{id}-strip-{Suffix(shape)}", shape, culture));
        page.Raw("</figure>\n");
        StripTable(page, apiary.Strip, culture);
        Season(page, apiary.Strip, culture);
        Days(page, apiary, culture);
        Ranking(page, apiary, id, culture);
        Colonies(page, apiary, culture);
        Others(page, apiary, culture);
        page.Raw("</section>\n");
    }

    private static void StripTable(Html page, SeasonStrip strip, CultureInfo culture)
    {
        page.Raw("<details>\n").Element("summary", ReportTexts.PictureAsTable);
        var heads = SeasonStripTable.Heads;
        page.Table(ReportTexts.FormatPictureByDay(strip.Apiary), "@" + heads[0], heads[1], heads[2], heads[3], heads[4]);
        foreach (var row in SeasonStripTable.Rows(strip, culture))
            page.Row(row.When, row.Subject, row.Finding, row.Basis, row.State);
        page.EndTable().Raw("</details>\n");
    }

    private static void Season(Html page, SeasonStrip strip, CultureInfo culture)
    {
        if (strip.Phases.Count + strip.Lines.Count + strip.Dues.Count == 0)
            return;
        page.Table(ReportTexts.SeasonHead, "@" + ReportTexts.When, ReportTexts.What, "", ReportTexts.State);
        foreach (var row in SeasonStripTable.Rows(strip, culture))
        {
            if (row.Kind is not (StripRowKind.Jar or StripRowKind.Other))
                page.Row(row.When, row.Subject, row.Finding, row.State);
        }

        page.EndTable();
    }

    private static void Days(Html page, ApiaryReport apiary, CultureInfo culture)
    {
        if (apiary.Days.Count == 0)
        {
            page.Element("p", ReportTexts.NoJarTaken);
            return;
        }

        page.Table(
            ReportTexts.DaysHead, "@" + ReportTexts.Day, ReportTexts.Method, "#" + ReportTexts.Jars, "#" + ReportTexts.Mites, "#" + ReportTexts.Bees, ReportTexts.LevelInterval,
            "#" + ReportTexts.Above, "#" + ReportTexts.Unclear, "#" + ReportTexts.Below);
        foreach (var day in apiary.Days)
        {
            page.Row(Say.Day(day.On), day.Method, Count(day.Jars, culture), Count(day.Mites, culture), Count(day.Bees, culture),
                ReportWords.Reading(day, culture), Count(day.Over, culture), Count(day.Unclear, culture), Count(day.Below, culture));
        }

        page.EndTable();
    }

    private static void Ranking(Html page, ApiaryReport apiary, string id, CultureInfo culture)
    {
        var rows = new List<RankRow>();
        LineStep? line = null;
        DateOnly? latest = null;
        foreach (var colony in apiary.Colonies)
        {
            // Only a living colony can still be helped; a jar on another scale cannot be ranked with the rest.
            if (colony.Fate is not null || colony.Jars.Count == 0 || colony.Jars[^1] is not { Standing: not null } jar)
                continue;
            rows.Add(new($"{colony.Name}, {jar.On.ToString("MM-dd", CultureInfo.InvariantCulture)}", jar.Level, jar.Lower, jar.Upper, jar.Standing, jar.Jar));
            latest = latest is { } day && day > jar.On ? day : jar.On;
        }

        if (rows.Count < 2)
            return;
        foreach (var step in apiary.Strip.Lines)
        {
            if (step.From <= latest && latest <= step.To)
                line = step;
        }

        page.Raw("<figure class=\"rank\">\n").Element("figcaption", ReportTexts.RankHead);
        Both(page, shape => RankDrawing.Draw(
            ReportTexts.FormatRankTitle(apiary.Name), ReportTexts.RankSentence,
            rows, line?.Watch, line?.Act, $"{id}-rank-{Suffix(shape)}", shape, culture));
        page.Raw("</figure>\n");
    }

    private static void Colonies(Html page, ApiaryReport apiary, CultureInfo culture)
    {
        if (apiary.Colonies.Count == 0)
            return;
        page.Table(
            ReportTexts.JarsByColony, ReportTexts.Colony, "@" + ReportTexts.Day, ReportTexts.Method, "#" + ReportTexts.Mites, "#" + ReportTexts.Bees, ReportTexts.LevelInterval, ReportTexts.Standing);
        foreach (var colony in apiary.Colonies)
        {
            page.Raw("</tbody>\n<tbody class=\"colony\">\n");
            var name = colony.Fate is { } fate ? $"{colony.Name} ({fate})" : colony.Name;
            if (colony.Jars.Count == 0)
                page.Row(name, "", ReportTexts.NoJar, "", "", "", "");
            for (var i = 0; i < colony.Jars.Count; i++)
            {
                var jar = colony.Jars[i];
                page.Row(i == 0 ? name : "", Say.Day(jar.On), jar.Method, Count(jar.Mites, culture), Count(jar.Bees, culture),
                    LevelText.Reading(jar.Level, jar.Lower, jar.Upper, culture), Words.Brief(jar.Standing));
            }
        }

        page.EndTable();
    }

    private static void Others(Html page, ApiaryReport apiary, CultureInfo culture)
    {
        if (apiary.Colonies.All(colony => colony.Others.Count == 0))
            return;
        page.Table(
            ReportWords.OthersHead, ReportTexts.Colony, "@" + ReportTexts.Day, ReportTexts.What, ReportTexts.OwnScale, ReportTexts.From, ReportTexts.AllMites, ReportTexts.Standing);
        foreach (var colony in apiary.Colonies)
        {
            foreach (var other in colony.Others)
            {
                var reading = other.Reading;
                page.Row(colony.Name, Say.Day(other.On), reading.Method, OtherText.Reading(reading, culture), reading.Counted,
                    OtherText.Total(reading, culture), reading.Voids.Count > 0 ? $"{OtherText.Standing(reading)}: {string.Join(" ", reading.Voids)}" : OtherText.Standing(reading));
            }
        }

        page.EndTable();
    }

    private static void Both(Html page, Func<DrawingShape, string> draw)
    {
        foreach (var shape in (ReadOnlySpan<DrawingShape>)[DrawingShape.Wide, DrawingShape.Narrow])
            page.Raw($"<div class=\"{Suffix(shape)}\">\n").Raw(draw(shape)).Raw("</div>\n");
    }

    private static string Suffix(DrawingShape shape) => shape == DrawingShape.Wide ? "wide" : "narrow";

    private static string Count(double number, CultureInfo culture) => number.ToString("0", culture);
}
