using System.Globalization;
using Foundress.Book.Wording;
using Foundress.Reports.Drawing;

namespace Foundress.Reports.Reporting;

/// <summary>The sheet for the clipboard: the colonies drawn, room to write, and the chart by which the round may stop early.</summary>
public static class ClipboardSheet
{
    /// <summary>The sheet as one HTML page that needs nothing else and prints on A4 and US letter paper.</summary>
    /// <param name="title">What the round is, for its head.</param>
    /// <param name="facts">Method, day, times and seed, a line each.</param>
    /// <param name="cautions">What to mind, shown above the list.</param>
    /// <param name="parts">The apiaries.</param>
    /// <param name="culture">Whose numbers to write.</param>
    /// <exception cref="ArgumentException">A chart cannot be drawn; the message names why.</exception>
    public static string Write(string title, IReadOnlyList<string> facts, IReadOnlyList<string> cautions, IReadOnlyList<ClipboardPart> parts, CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(cautions);
        ArgumentNullException.ThrowIfNull(parts);
        var page = new Html();
        page.Raw($"<!doctype html>\n<html lang=\"{Languages.Current.Code}\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        page.Element("title", title).Raw("<style>\n").Raw(Stylesheet.Strip).Raw(Stylesheet.Report).Raw("</style>\n</head>\n<body class=\"clipboard\">\n<header>\n");
        page.Element("h1", title);
        foreach (var fact in facts)
            page.Element("p", fact);
        page.Raw("</header>\n<main>\n");
        if (cautions.Count > 0)
        {
            page.Raw("<ul>\n");
            foreach (var caution in cautions)
                page.Element("li", caution);
            page.Raw("</ul>\n");
        }

        for (var i = 0; i < parts.Count; i++)
            Part(page, parts[i], string.Create(CultureInfo.InvariantCulture, $"chart-{i + 1}"), culture);
        return page.Raw("</main>\n</body>\n</html>\n").ToString();
    }

    private static void Part(Html page, ClipboardPart part, string id, CultureInfo culture)
    {
        page.Raw("<section class=\"apiary\">\n").Element("h2", part.Apiary);
        var early = part.Lines.Count > 0;
        if (early)
        {
            page.Element("p", part.Rule, "sentence");
            page.Table(
                ReportTexts.FormatJarsInOrder(part.Apiary), ReportTexts.Jar, ReportTexts.Colony, ReportTexts.Bees, ReportTexts.Mites, ReportTexts.MitesSoFar, ReportTexts.WaitUpTo, ReportTexts.ActFrom);
        }
        else
        {
            page.Table(ReportTexts.FormatJarsInOrder(part.Apiary), ReportTexts.Jar, ReportTexts.Colony, ReportTexts.Bees, ReportTexts.Mites);
        }

        for (var i = 0; i < part.Colonies.Count; i++)
        {
            var number = (i + 1).ToString(culture);
            if (early)
            {
                var line = part.Lines[Math.Min(i, part.Lines.Count - 1)];
                page.Row(number, part.Colonies[i], string.Empty, string.Empty, string.Empty, line.WaitUpTo?.ToString(culture) ?? "–", line.ActFrom.ToString(culture));
            }
            else
            {
                page.Row(number, part.Colonies[i], string.Empty, string.Empty);
            }
        }

        page.EndTable();
        if (part.Reserves.Count > 0)
            page.Element("p", ReportTexts.FormatReserves(string.Join(", ", part.Reserves)));
        if (early)
            page.Raw("<figure>\n").Raw(StopChartDrawing.Draw(part.Apiary, part.Rule, part.Lines, [], id, DrawingShape.Wide, culture)).Raw("</figure>\n");
        page.Raw("</section>\n");
    }
}
