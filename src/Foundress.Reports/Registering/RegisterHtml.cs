using System.Globalization;
using Foundress.Book.Registering;
using Foundress.Book.Wording;
using Foundress.Reports.Drawing;
using Foundress.Reports.Reporting;

namespace Foundress.Reports.Registering;

/// <summary>Writes the register as HTML: a page of its own that prints on A4 and US letter paper, or its table for another page.</summary>
public static class RegisterHtml
{
    private static string[] Heads =>
        [RegisterTexts.HeadDays, RegisterTexts.HeadWhere, RegisterTexts.HeadWhat, RegisterTexts.HeadQuantity, RegisterTexts.HeadWithdrawal, RegisterTexts.HeadReason];

    /// <summary>The whole page, which needs nothing else.</summary>
    /// <param name="register">The register.</param>
    public static string Page(Register register)
    {
        ArgumentNullException.ThrowIfNull(register);
        var page = new Html();
        page.Raw($"<!doctype html>\n<html lang=\"{Languages.Current.Code}\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        page.Element("title", RegisterTexts.FormatPageTitle(register.Operation));
        page.Raw("<style>\n").Raw(Stylesheet.Register).Raw("</style>\n</head>\n<body class=\"register\">\n<header>\n");
        page.Element("h1", RegisterTexts.FormatPageHead(register.Operation));
        page.Element("p", Plural.Pick(register.Rows.Count, RegisterTexts.FormatDrawnUp(register.FilterText, Say.Day(register.Today), register.Rows.Count)), "span");
        if (register.Invented)
            page.Element("p", ReportWords.Invented, "invented");
        page.Raw("</header>\n<main>\n").Raw(Table(register)).Raw("</main>\n<footer>\n").Element("p", RegisterWords.Foot);
        return page.Raw("</footer>\n</body>\n</html>\n").ToString();
    }

    /// <summary>The table alone. Every text in it is escaped.</summary>
    /// <param name="register">The register.</param>
    public static string Table(Register register)
    {
        ArgumentNullException.ThrowIfNull(register);
        var page = new Html();
        if (register.Rows.Count == 0)
            return page.Element("p", RegisterTexts.NoneRecorded).ToString();
        page.Raw("<table class=\"registertable\">\n").Element("caption", RegisterTexts.FormatPageTitle(register.FilterText)).Raw("<thead>\n<tr>");
        var heads = Heads;
        foreach (var head in heads)
            page.Raw("<th scope=\"col\">").Text(head).Raw("</th>");
        page.Raw("</tr>\n</thead>\n<tbody>\n");
        foreach (var row in register.Rows)
            Row(page, row, heads);
        return page.Raw("</tbody>\n</table>\n").ToString();
    }

    private static void Row(Html page, RegisterRow row, string[] heads)
    {
        var facts = row.Facts;
        var gone = row.State != RegisterState.Holds;
        page.Raw(gone ? "<tr class=\"gone\">" : "<tr>");
        Cell(page, gone, heads[0], ("", RegisterWords.Period(row)), (RegisterTexts.WrittenBy, RegisterWords.Written(row)));
        Cell(page, gone, heads[1], ("", string.Join(", ", row.Apiaries)), ("", RegisterWords.Colonies(row)));
        Cell(page, gone, heads[2], ("", row.Control), (RegisterTexts.Active, row.IsSubstance ? row.Ingredient : ""), (RegisterTexts.Product, facts.Product), (RegisterTexts.Batch, facts.Batch));
        Cell(page, gone, heads[3], ("", facts.Quantity), (RegisterTexts.Supplier, facts.Supplier), (RegisterTexts.ProofOfPurchase, facts.ProofOfPurchase));
        Cell(page, gone, heads[4], (RegisterTexts.Withdrawal, row.IsSubstance ? RegisterWords.Withdrawal(row) : RegisterTexts.NoWithdrawal), (RegisterTexts.GivenBy, facts.By), (RegisterTexts.Prescriber, facts.Prescriber));
        page.Raw("<td data-head=\"").Text(heads[5]).Raw("\">");
        Parts(page, gone, (RegisterTexts.Reason, row.Reason), (RegisterTexts.Weather, Weather(row)), (RegisterTexts.Note, facts.Note));
        foreach (var end in row.Ends)
        {
            Parts(page, gone || end.Struck is not null, (RegisterTexts.End, RegisterWords.Ending(end)));
            if (end.Struck is { } struck && !gone)
                page.Element("div", RegisterTexts.FormatStruckBy(struck.By, Say.MomentUtc(struck.At), struck.Reason), "strike");
        }

        Parts(page, false, (RegisterTexts.Outcome, row.Outcome));
        // For the keeper on the screen; on paper it would double the pages.
        if (RegisterGaps.Of(row) is { Count: > 0 } gaps)
            page.Raw("<div class=\"gaps\"><small>").Text(RegisterTexts.NotFilledIn + " ").Raw("</small>").Text(string.Join(", ", gaps)).Raw("</div>");
        if (gone)
            page.Element("div", RegisterWords.Strike(row), "strike");
        page.Raw("</td></tr>\n");
    }

    private static string? Weather(RegisterRow row)
    {
        var facts = row.Facts;
        var air = (facts.AirLow, facts.AirHigh) switch
        {
            ({ } low, { } high) => RegisterTexts.FormatAirFromTo(Degrees(low), Degrees(high)),
            ({ } low, null) => RegisterTexts.FormatAirFrom(Degrees(low)),
            (null, { } high) => RegisterTexts.FormatAirUpTo(Degrees(high)),
            _ => null,
        };
        return air is null ? facts.Weather : string.IsNullOrWhiteSpace(facts.Weather) ? air : $"{air}, {facts.Weather}";
    }

    private static string Degrees(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private static void Cell(Html page, bool gone, string head, params ReadOnlySpan<(string Name, string? Text)> parts)
    {
        page.Raw("<td data-head=\"").Text(head).Raw("\">");
        Parts(page, gone, parts);
        page.Raw("</td>");
    }

    private static void Parts(Html page, bool gone, params ReadOnlySpan<(string Name, string? Text)> parts)
    {
        foreach (var (name, text) in parts)
        {
            if (string.IsNullOrWhiteSpace(text))
                continue;
            page.Raw(gone ? "<div><del>" : "<div>");
            if (name.Length > 0)
                page.Raw("<small>").Text(name + ": ").Raw("</small>");
            page.Words(text).Raw(gone ? "</del></div>" : "</div>");
        }
    }
}
