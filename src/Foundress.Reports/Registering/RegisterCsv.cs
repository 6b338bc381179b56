using System.Globalization;
using Foundress.Book.Importing;
using Foundress.Book.Registering;
using Foundress.Book.Wording;

namespace Foundress.Reports.Registering;

/// <summary>Writes the register as CSV (RFC 4180, UTF-8). The columns are documented in <c>docs/csv.md</c>.</summary>
public static class RegisterCsv
{
    /// <summary>The columns.</summary>
    public static IReadOnlyList<string> Columns { get; } =
    [
        "state", "start", "end", "planned_end", "days", "apiary", "latitude", "longitude", "colonies", "colony", "agent", "control", "ingredient", "product",
        "quantity_each", "batch", "supplier", "proof_of_purchase", "prescriber", "withdrawal_days", "withdrawal_over", "given_by", "reason", "air_low_c", "air_high_c",
        "weather", "endings", "outcome", "note", "struck_by", "struck_on", "struck_reason", "written_by", "written_on", "use", "entry",
    ];

    /// <summary>The register as CSV: a row for each record, what no longer holds included.</summary>
    /// <param name="register">The register.</param>
    public static string Write(Register register)
    {
        ArgumentNullException.ThrowIfNull(register);
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        var csv = new CsvWriter(text, ',');
        csv.Write(Columns);
        foreach (var row in register.Rows)
        {
            var facts = row.Facts;
            csv.Write(
            [
                RegisterJson.StateOf(row.State), Say.IsoDay(facts.Start), Day(row.End), Day(facts.PlannedEnd), Whole(row.Days), string.Join("; ", row.Apiaries),
                Number(row.Place?.Latitude), Number(row.Place?.Longitude), Whole(row.Colonies.Count), string.Join("; ", row.Colonies), facts.Agent, row.Control, row.Ingredient,
                facts.Product ?? "", facts.Quantity ?? "", facts.Batch ?? "", facts.Supplier ?? "", facts.ProofOfPurchase ?? "", facts.Prescriber ?? "",
                Whole(row.WithdrawalDays), Day(row.WithdrawalOver), facts.By ?? "", row.Reason, Number(facts.AirLow), Number(facts.AirHigh), facts.Weather ?? "",
                string.Join("; ", row.Ends.Select(end => end.Struck is null ? RegisterWords.Ending(end) : RegisterTexts.FormatStruckOutEnding(RegisterWords.Ending(end)))), row.Outcome, facts.Note ?? "",
                row.Struck?.By ?? "", row.Struck is { } struck ? Stamp(struck.At) : "", row.Struck?.Reason ?? "",
                row.Author, Stamp(row.Written), facts.Control.ToString(), row.Entry.ToString(),
            ]);
        }

        return text.ToString();
    }

    private static string Stamp(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) + " UTC";

    private static string Day(DateOnly? day) => day is { } known ? Say.IsoDay(known) : string.Empty;

    private static string Whole(int? number) => number?.ToString(CultureInfo.InvariantCulture) ?? string.Empty;

    private static string Number(double? number) => number?.ToString("0.######", CultureInfo.InvariantCulture) ?? string.Empty;
}
