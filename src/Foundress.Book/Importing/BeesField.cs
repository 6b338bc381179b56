using System.Globalization;
using Foundress.Book.Rules;
using Foundress.Science;

namespace Foundress.Book.Importing;

/// <summary>A number of bees in a jar: 1 to 5,000, whole when they were counted.</summary>
public static class BeesField
{
    /// <summary>Reads a number of bees.</summary>
    /// <param name="text">The text; blanks around it do not matter.</param>
    /// <param name="basis">How the number is known; only a counted one must be whole.</param>
    /// <param name="decimalComma">Whether a comma may stand for the decimal point, as in files that separate fields otherwise.</param>
    /// <param name="bees">The number.</param>
    /// <returns>Null on success, otherwise what is wrong and how to put it right.</returns>
    public static string? Read(string text, BeeBasis basis, bool decimalComma, out double bees)
    {
        bees = 0;
        text = text.Trim();
        if (text.Length == 0)
            return FieldTexts.BeesMissing;
        if (text[0] is '-' or '\u2212')
            return FieldTexts.BeesNegative;
        if (!TryRead(text, decimalComma, out var number))
        {
            return !decimalComma && text.Contains(',')
                ? FieldTexts.BeesDecimalPoint
                : FieldTexts.FormatBeesRange(JarLimits.MostBees);
        }

        if (number == 0)
            return FieldTexts.BeesZero;
        if (number < 1)
            return FieldTexts.BeesBelowOne;
        if (number > JarLimits.MostBees)
            return FieldTexts.FormatBeesTooMany(JarLimits.MostBees);
        if (basis == BeeBasis.Counted && number != Math.Floor(number))
            return FieldTexts.BeesWhole;
        if (number < 10 && number != Math.Floor(number))
            return FieldTexts.BeesThousands;
        bees = number;
        return null;
    }

    private static bool TryRead(string text, bool decimalComma, out double number) =>
        double.TryParse(
            decimalComma ? text.Replace(',', '.') : text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number)
        && double.IsFinite(number);
}
