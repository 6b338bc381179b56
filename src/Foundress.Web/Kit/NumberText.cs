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
            return rule.Decimals == 0 ? KitTexts.FormatNotANumberWhole(trimmed, Example(rule, culture)) : KitTexts.FormatNotANumber(trimmed, Example(rule, culture));
        if (rule.Decimals == 0 && number != Math.Floor(number))
            return KitTexts.FormatNotWhole(trimmed, Example(rule, culture));
        if (number < rule.Least || number > rule.Most)
            return KitTexts.FormatOutOfRange(trimmed, Write(rule.Least, culture), Write(rule.Most, culture));
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

    private static string Example(NumberRule rule, CultureInfo culture) =>
        Write(Math.Clamp(rule.Decimals == 0 ? 12 : 2.5, rule.Least, rule.Most), culture);
}
