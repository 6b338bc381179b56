using Foundress.Book.Registering;
using Foundress.Book.Wording;
using Foundress.Reports.Drawing;
using Foundress.Reports.Reporting;

namespace Foundress.Reports.Registering;

/// <summary>Writes the register as HTML: a page of its own that prints on A4 and US letter paper, or its table for another page.</summary>
public static class RegisterHtml
{
    private static readonly string[] Heads = ["Days", "Where, and which colonies", "What, batch", "Quantity for each, supplier, proof of purchase", "Withdrawal, given by, prescriber", "Reason, weather, end, outcome"];

    /// <summary>The whole page, which needs nothing else.</summary>
    /// <param name="register">The register.</param>
    public static string Page(Register register)
    {
        ArgumentNullException.ThrowIfNull(register);
        var page = new Html();
        page.Raw("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        page.Element("title", $"{RegisterWords.Title}, {register.Operation}");
        page.Raw("<style>\n").Raw(Stylesheet.Register).Raw("</style>\n</head>\n<body class=\"register\">\n<header>\n");
        page.Element("h1", $"{RegisterWords.Title}: {register.Operation}");
        page.Element("p", $"{register.FilterText}. Drawn up on {Say.Day(register.Today)}; {Say.Count(register.Rows.Count, "record", "records")}.", "span");
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
            return page.Element("p", "No control was recorded in this part of the book.").ToString();
        page.Raw("<table class=\"registertable\">\n").Element("caption", $"{RegisterWords.Title}, {register.FilterText}").Raw("<thead>\n<tr>");
        foreach (var head in Heads)
            page.Raw("<th scope=\"col\">").Text(head).Raw("</th>");
        page.Raw("</tr>\n</thead>\n<tbody>\n");
        foreach (var row in register.Rows)
            Row(page, row);
        return page.Raw("</tbody>\n</table>\n").ToString();
    }

    private static void Row(Html page, RegisterRow row)
    {
        var facts = row.Facts;
        var gone = row.State != RegisterState.Holds;
        page.Raw(gone ? "<tr class=\"gone\">" : "<tr>");
        Cell(page, gone, Heads[0], ("", RegisterWords.Period(row)), ("Written by", RegisterWords.Written(row)));
        Cell(page, gone, Heads[1], ("", string.Join(", ", row.Apiaries)), ("", RegisterWords.Colonies(row)));
        Cell(page, gone, Heads[2], ("", row.Control), ("Active", row.IsSubstance ? row.Ingredient : ""), ("Product", facts.Product), ("Batch", facts.Batch));
        Cell(page, gone, Heads[3], ("", facts.Quantity), ("Supplier", facts.Supplier), ("Proof of purchase", facts.ProofOfPurchase));
        Cell(page, gone, Heads[4], ("Withdrawal", row.IsSubstance ? RegisterWords.Withdrawal(row) : "none"), ("Given by", facts.By), ("Prescriber", facts.Prescriber));
        page.Raw("<td data-head=\"").Text(Heads[5]).Raw("\">");
        Parts(page, gone, ("Reason", row.Reason), ("Weather", Weather(row)), ("Note", facts.Note));
        foreach (var end in row.Ends)
        {
            Parts(page, gone || end.Struck is not null, ("End", RegisterWords.Ending(end)));
            if (end.Struck is { } struck && !gone)
                page.Element("div", $"Struck out by {struck.By} on {RegisterWords.Stamp(struck.At)}: {struck.Reason}", "strike");
        }

        Parts(page, false, ("Outcome", row.Outcome));
        // For the keeper on the screen; on paper it would double the pages.
        if (RegisterGaps.Of(row) is { Count: > 0 } gaps)
            page.Raw("<div class=\"gaps\"><small>Not filled in: </small>").Text(string.Join(", ", gaps)).Raw("</div>");
        if (gone)
            page.Element("div", RegisterWords.Strike(row), "strike");
        page.Raw("</td></tr>\n");
    }

    private static string? Weather(RegisterRow row)
    {
        var facts = row.Facts;
        var air = (facts.AirLow, facts.AirHigh) switch
        {
            ({ } low, { } high) => FormattableString.Invariant($"{low:0.#} to {high:0.#} °C"),
            ({ } low, null) => FormattableString.Invariant($"from {low:0.#} °C"),
            (null, { } high) => FormattableString.Invariant($"up to {high:0.#} °C"),
            _ => null,
        };
        return air is null ? facts.Weather : string.IsNullOrWhiteSpace(facts.Weather) ? air : $"{air}, {facts.Weather}";
    }

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
