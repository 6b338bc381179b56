using Foundress.Book.Rules;

namespace Foundress.Book.Importing;

/// <summary>A number of mites counted in a jar: whole, 0 to 10,000.</summary>
public static class MitesField
{
    /// <summary>Reads a number of mites.</summary>
    /// <param name="text">The text; blanks around it do not matter.</param>
    /// <param name="mites">The number.</param>
    /// <returns>Null on success, otherwise what is wrong and how to put it right.</returns>
    public static string? Read(string text, out int mites)
    {
        mites = 0;
        text = text.Trim();
        if (WholeNumber.TryRead(text, out var number))
        {
            if (number > JarLimits.MostMites)
                return FieldTexts.FormatMitesTooMany(JarLimits.MostMites);
            mites = (int)number;
            return null;
        }

        if (text.Length == 0)
            return FieldTexts.MitesMissing;
        if (text[0] is '-' or '\u2212')
            return FieldTexts.MitesNegative;
        return WholeNumber.IsFraction(text)
            ? FieldTexts.MitesWhole
            : FieldTexts.FormatMitesRange(JarLimits.MostMites);
    }
}
