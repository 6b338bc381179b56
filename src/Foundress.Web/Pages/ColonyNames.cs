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
                return $"That makes more than {Most} colonies. Register at most {Most} at once.";
        }

        foreach (var name in found)
        {
            if (name.Length > LongestName)
                return $"“{name}” is longer than {LongestName} characters. Give it a shorter name.";
            if (!known.Add(name))
                return $"“{name}” is named twice. Name each colony once.";
        }

        return found.Count == 0 ? "No name was given. Type a number or name, or a range such as 1-12." : null;
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
            return $"The range “{part}” runs backwards. Type {prefix}{last}-{prefix}{first}.";
        if (last - first >= Most)
            return $"The range “{part}” makes {last - first + 1} colonies. Register at most {Most} at once.";
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
