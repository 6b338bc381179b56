using System.Globalization;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Book.Wording;

namespace Foundress.Book.Rules;

internal static class NormalsRules
{
    internal static void Check(NormalsRecord record, BookState state, Findings findings)
    {
        if (!state.Apiaries.ContainsKey(record.Apiary))
            findings.Error("apiary", record.Apiary, RuleTexts.ApiaryUnknown);
        CheckMonths("highs", record.Highs, findings);
        CheckMonths("lows", record.Lows, findings);
        for (var month = 0; month < Math.Min(record.Highs.Count, record.Lows.Count); month++)
        {
            if (record.Lows[month] > record.Highs[month])
                findings.Error("lows", record.Lows[month], RuleTexts.FormatLowAboveHigh(Month((month % 12) + 1), Findings.Show(record.Lows[month]), Findings.Show(record.Highs[month])));
        }

        findings.Text("station", record.Station, 200);
    }

    // The reader's culture may be of a language that there are no texts in; then the sentence is English, and so is the month.
    private static string Month(int month) =>
        (Languages.Current == Languages.English ? CultureInfo.InvariantCulture : CultureInfo.CurrentUICulture).DateTimeFormat.GetMonthName(month);

    private static void CheckMonths(string field, IReadOnlyList<double> months, Findings findings)
    {
        if (months.Count != 12)
            findings.Error(field, months.Count, RuleTexts.FormatTwelveTemperatures(months.Count));
        foreach (var degrees in months)
            findings.Range(field, degrees, -60, 60, QuantityTexts.AirTemperature);
    }
}
