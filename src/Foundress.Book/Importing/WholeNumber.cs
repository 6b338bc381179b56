using System.Globalization;

namespace Foundress.Book.Importing;

/// <summary>Plain whole numbers: digits only, in no culture's dress.</summary>
internal static class WholeNumber
{
    /// <returns>False when the text is not made of digits only, or has more than eighteen of them.</returns>
    internal static bool TryRead(string text, out long number)
    {
        number = 0;
        return text.Length <= 18 && long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number);
    }

    /// <summary>Whether the text is a number that is not whole, with a point or a comma.</summary>
    internal static bool IsFraction(string text) =>
        double.TryParse(text.Replace(',', '.'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _)
        && text.AsSpan().IndexOfAny('.', ',') >= 0;
}
