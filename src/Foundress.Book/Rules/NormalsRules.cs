using System.Globalization;
using Foundress.Book.Records;
using Foundress.Book.State;

namespace Foundress.Book.Rules;

internal static class NormalsRules
{
    internal static void Check(NormalsRecord record, BookState state, Findings findings)
    {
        if (!state.Apiaries.ContainsKey(record.Apiary))
            findings.Error("apiary", record.Apiary, "This apiary is not in the book. Register it first, or choose another.");
        CheckMonths("highs", record.Highs, findings);
        CheckMonths("lows", record.Lows, findings);
        for (var month = 0; month < Math.Min(record.Highs.Count, record.Lows.Count); month++)
        {
            if (record.Lows[month] > record.Highs[month])
                findings.Error("lows", record.Lows[month], $"In {CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName((month % 12) + 1)} the lowest ({Findings.Show(record.Lows[month])} °C) is above the highest ({Findings.Show(record.Highs[month])} °C). Swap them.");
        }

        findings.Text("station", record.Station, 200);
    }

    private static void CheckMonths(string field, IReadOnlyList<double> months, Findings findings)
    {
        if (months.Count != 12)
            findings.Error(field, months.Count, $"12 temperatures are expected, January to December, not {months.Count}.");
        foreach (var degrees in months)
            findings.Range(field, degrees, -60, 60, "an air temperature in degrees Celsius");
    }
}
