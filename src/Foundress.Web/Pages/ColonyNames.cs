using System.Globalization;

namespace Foundress.Web.Pages;

/// <summary>Many colonies named at once: <c>1-12, 14, Q7</c>.</summary>
public static class ColonyNames
{
    /// <summary>No more colonies than this are registered at once.</summary>
    public const int Most = 500;

    private const int LongestName = 60;

    /// <summary>Reads names and ranges of numbers, separated by commas, semicolons or line ends.</summary>
    /// <param name="text">What was typed. A range may carry letters in front of both numbers, and keeps leading zeros: <c>A01-A12</c>.</param>
    /// <param name="names">The names, in the order typed.</param>
    /// <returns>What is wrong, naming the value and the fix; null when nothing is.</returns>
    public static string? Read(string text, out IReadOnlyList<string> names)
    {
        var found = new List<string>();
        var known = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        names = found;
        foreach (var part in text.Split([',', ';', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (Expand(part, found) is { } problem)
                return problem;
            if (found.Count > Most)
                return ColonyTexts.FormatTooMany(Most);
        }

        foreach (var name in found)
        {
            if (name.Length > LongestName)
                return ColonyTexts.FormatNameTooLong(name, LongestName);
            if (!known.Add(name))
                return ColonyTexts.FormatNamedTwice(name);
        }

        return found.Count == 0 ? ColonyTexts.NoName : null;
    }

    private static string? Expand(string part, List<string> found)
    {
        var dash = part.IndexOfAny(['-', '–']);
        if (dash <= 0 || dash == part.Length - 1
            || !TryNumber(part[..dash].Trim(), out var prefix, out var first, out var digits)
            || !TryNumber(part[(dash + 1)..].Trim(), out var lastPrefix, out var last, out _)
            || (lastPrefix.Length > 0 && lastPrefix != prefix))
        {
            found.Add(part);
            return null;
        }

        if (last < first)
            return ColonyTexts.FormatRangeBackwards(part, $"{prefix}{last}-{prefix}{first}");
        if (last - first >= Most)
            return ColonyTexts.FormatRangeTooLong(part, last - first + 1, Most);
        for (var number = first; number <= last; number++)
            found.Add(prefix + number.ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0'));
        return null;
    }

    // Letters, then digits. Leading zeros count towards the width; a plain number has width 1.
    private static bool TryNumber(string text, out string prefix, out int number, out int width)
    {
        var start = text.Length;
        while (start > 0 && char.IsAsciiDigit(text[start - 1]))
            start--;
        prefix = text[..start];
        var digits = text[start..];
        width = digits.Length > 1 && digits[0] == '0' ? digits.Length : 1;
        return int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out number) && digits.Length <= 7;
    }
}
