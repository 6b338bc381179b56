using System.Globalization;

namespace Foundress.Web.Kit;

/// <summary>Numbers as people type them: in the device's own form, or with a full stop.</summary>
public static class NumberText
{
    private const NumberStyles Plain = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint
        | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite;

    /// <summary>Reads what was typed. Empty text is no number and no problem.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="rule">What is allowed.</param>
    /// <param name="culture">How the device writes numbers.</param>
    /// <param name="value">The number; null when the text is empty or not allowed.</param>
    /// <returns>What is wrong, naming the value and the fix; null when nothing is.</returns>
    public static string? Read(string text, NumberRule rule, CultureInfo culture, out double? value)
    {
        value = null;
        var trimmed = text.Trim();
        if (trimmed.Length == 0)
            return null;
        if (!TryRead(trimmed, culture, out var number))
            return $"“{trimmed}” is not a number. Type {Example(rule, culture)}.";
        if (rule.Decimals == 0 && number != Math.Floor(number))
            return $"{trimmed} is not a whole number. Type {Example(rule, culture)}.";
        if (number < rule.Least || number > rule.Most)
            return $"{trimmed} is out of range. Type a number from {Write(rule.Least, culture)} to {Write(rule.Most, culture)}.";
        value = number;
        return null;
    }

    /// <summary>The number as the device writes it, without grouping.</summary>
    public static string Write(double value, CultureInfo culture) => Math.Round(value, 10).ToString("0.##########", culture);

    // A comma and a full stop are both read as the decimal mark: nobody groups the thousands of a handful of mites.
    private static bool TryRead(string text, CultureInfo culture, out double number) =>
        (double.TryParse(text, Plain, culture, out number)
            || double.TryParse(text.Replace(',', '.'), Plain, CultureInfo.InvariantCulture, out number))
        && double.IsFinite(number);

    private static string Example(NumberRule rule, CultureInfo culture) => rule.Decimals == 0
        ? $"a whole number, such as {Write(Math.Clamp(12, rule.Least, rule.Most), culture)}"
        : $"a number, such as {Write(Math.Clamp(2.5, rule.Least, rule.Most), culture)}";
}
