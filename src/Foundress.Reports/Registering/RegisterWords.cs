using Foundress.Book.Records;
using Foundress.Book.Registering;
using Foundress.Book.Wording;

namespace Foundress.Reports.Registering;

/// <summary>The register's cells in words, the same on every screen and in every file.</summary>
public static class RegisterWords
{
    /// <summary>What stands over the register.</summary>
    public const string Title = "Register of controls";

    /// <summary>What it is and what it is not.</summary>
    public const string Foot =
        "Fields after Regulation (EU) 2019/6, Article 108(2); local law may ask for more, and for years of keeping. Records are never erased: what was struck out or put right stays here, crossed out, with the reason. The label, local law and licensed practice decide about every use.";

    /// <summary>First and last day.</summary>
    public static string Period(RegisterRow row) => (row.End, row.Facts.PlannedEnd) switch
    {
        ({ } end, _) when end == row.Facts.Start => Say.Day(end),
        ({ } end, _) => $"{Say.Day(row.Facts.Start)} to {Say.Day(end)} ({Say.Count(row.Days!.Value, "day", "days")})",
        (null, { } planned) => $"{Say.Day(row.Facts.Start)}, planned to {Say.Day(planned)}",
        _ => $"{Say.Day(row.Facts.Start)}, end not recorded",
    };

    /// <summary>The colonies: how many, and which.</summary>
    public static string Colonies(RegisterRow row) => $"{Say.Count(row.Colonies.Count, "colony", "colonies")}: {string.Join(", ", row.Colonies)}";

    /// <summary>How a use ended, a sentence each.</summary>
    public static string Ending(RegisterEnd end)
    {
        var how = end.Ending switch
        {
            ControlEnding.StoppedEarly => "stopped early",
            ControlEnding.Partial => "given only in part",
            _ => "over",
        };
        var where = end.Colonies.Count == 0 ? string.Empty : $" in {string.Join(", ", end.Colonies)}";
        var why = string.Join(" ", new[] { end.Reason, end.Note }.Where(text => !string.IsNullOrWhiteSpace(text)));
        return $"{Say.Day(end.On)} {how}{where}{(why.Length > 0 ? $": {why}" : string.Empty)}";
    }

    /// <summary>The withdrawal period.</summary>
    public static string Withdrawal(RegisterRow row) => (row.WithdrawalDays, row.WithdrawalOver) switch
    {
        (null, _) => "not recorded",
        ({ } days, { } over) => $"{Say.Count(days, "day", "days")}, over on {Say.Day(over)}",
        ({ } days, null) => Say.Count(days, "day", "days"),
    };

    /// <summary>That a record no longer holds; empty when it does.</summary>
    public static string Strike(RegisterRow row) => row.Struck is { } struck
        ? $"{(row.State == RegisterState.Struck ? "Struck out" : "Replaced")} by {struck.By} on {Stamp(struck.At)}: {struck.Reason}"
        : string.Empty;

    /// <summary>Who wrote it down, and when.</summary>
    public static string Written(RegisterRow row) => $"{row.Author}, {Stamp(row.Written)}";

    /// <summary>A moment in UTC, to the minute: the register must read the same everywhere.</summary>
    public static string Stamp(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture) + " UTC";
}
