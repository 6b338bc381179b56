using System.Globalization;
using Foundress.Book.Wording;

namespace Foundress.Book.Importing;

/// <summary>The day of a jar: ISO 8601, yyyy-MM-dd, from 1980 (an older one is a slip of the year) to today.</summary>
public static class DateField
{
    private static readonly DateOnly Earliest = new(1980, 1, 1);

    /// <summary>Reads a day.</summary>
    /// <param name="text">The text; blanks around it do not matter.</param>
    /// <param name="today">No later day is taken.</param>
    /// <param name="day">The day.</param>
    /// <returns>Null on success, otherwise what is wrong and how to put it right. The order of day and month is never guessed.</returns>
    public static string? Read(string text, DateOnly today, out DateOnly day)
    {
        text = text.Trim();
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out day))
        {
            if (day > today)
                return FieldTexts.FormatDayInFuture(Say.Day(today));
            return day < Earliest ? FieldTexts.FormatDayTooOld(Say.Day(Earliest)) : null;
        }

        if (text.Length == 0)
            return FieldTexts.DayMissing;
        if (text.Length > 10 && text[10] is 'T' or ' ' && IsShapedAsDay(text.AsSpan(0, 10)))
            return FieldTexts.DayWithTime;
        if (text.Length == 10 && IsShapedAsDay(text))
            return FieldTexts.DayUnreal;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var serial) && serial is > 20_000 and < 80_000)
            return FieldTexts.DaySerial;
        return FieldTexts.DayForm;
    }

    private static bool IsShapedAsDay(ReadOnlySpan<char> text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (i is 4 or 7 ? text[i] != '-' : !char.IsAsciiDigit(text[i]))
                return false;
        }

        return true;
    }
}
