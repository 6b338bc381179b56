using Foundress.Book.Records;
using Foundress.Book.Registering;
using Foundress.Book.Wording;

namespace Foundress.Reports.Registering;

/// <summary>The register's cells in words, the same on every screen and in every file.</summary>
public static class RegisterWords
{
    /// <summary>What stands over the register.</summary>
    public static string Title => RegisterTexts.Title;

    /// <summary>What it is and what it is not.</summary>
    public static string Foot => RegisterTexts.Foot;

    /// <summary>First and last day.</summary>
    public static string Period(RegisterRow row) => (row.End, row.Facts.PlannedEnd) switch
    {
        ({ } end, _) when end == row.Facts.Start => Say.Day(end),
        ({ } end, _) => RegisterTexts.FormatPeriodDays(Say.Day(row.Facts.Start), Say.Day(end), Say.Days(row.Days!.Value)),
        (null, { } planned) => RegisterTexts.FormatPeriodPlanned(Say.Day(row.Facts.Start), Say.Day(planned)),
        _ => RegisterTexts.FormatPeriodOpen(Say.Day(row.Facts.Start)),
    };

    /// <summary>The colonies: how many, and which.</summary>
    public static string Colonies(RegisterRow row) => RegisterTexts.FormatColoniesNamed(Say.Colonies(row.Colonies.Count), string.Join(", ", row.Colonies));

    /// <summary>How a use ended, a sentence each.</summary>
    public static string Ending(RegisterEnd end)
    {
        var (day, colonies, all) = (Say.Day(end.On), string.Join(", ", end.Colonies), end.Colonies.Count == 0);
        var ending = end.Ending switch
        {
            ControlEnding.StoppedEarly => all ? RegisterTexts.FormatEndStoppedEarly(day) : RegisterTexts.FormatEndStoppedEarlyIn(day, colonies),
            ControlEnding.Partial => all ? RegisterTexts.FormatEndPartial(day) : RegisterTexts.FormatEndPartialIn(day, colonies),
            _ => all ? RegisterTexts.FormatEndOver(day) : RegisterTexts.FormatEndOverIn(day, colonies),
        };
        var why = string.Join(" ", new[] { end.Reason, end.Note }.Where(text => !string.IsNullOrWhiteSpace(text)));
        return why.Length > 0 ? RegisterTexts.FormatEndWhy(ending, why) : ending;
    }

    /// <summary>The withdrawal period.</summary>
    public static string Withdrawal(RegisterRow row) => (row.WithdrawalDays, row.WithdrawalOver) switch
    {
        (null, _) => RegisterTexts.NotRecorded,
        ({ } days, { } over) => RegisterTexts.FormatWithdrawalOver(Say.Days(days), Say.Day(over)),
        ({ } days, null) => Say.Days(days),
    };

    /// <summary>That a record no longer holds; empty when it does.</summary>
    public static string Strike(RegisterRow row)
    {
        if (row.Struck is not { } struck)
            return string.Empty;
        return row.State == RegisterState.Struck
            ? RegisterTexts.FormatStruckBy(struck.By, Say.MomentUtc(struck.At), struck.Reason)
            : RegisterTexts.FormatReplacedBy(struck.By, Say.MomentUtc(struck.At), struck.Reason);
    }

    /// <summary>Who wrote it down, and when.</summary>
    public static string Written(RegisterRow row) => $"{row.Author}, {Say.MomentUtc(row.Written)}";
}
