using System.Globalization;

namespace Foundress.Book.Wording;

/// <summary>Names and sentences that elsewhere begin with a capital letter, as they are written inside a sentence: small in English, unchanged in a language whose nouns keep the capital.</summary>
public static class Midway
{
    /// <summary>A name of several words inside a sentence: "Sugar shake" becomes "sugar shake".</summary>
    /// <param name="name">As it stands alone.</param>
    /// <param name="culture">The reader's culture.</param>
    public static string Name(string name, CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(name);
        return Languages.Current.CapitalNouns ? name : name.ToLower(culture);
    }

    /// <summary>A sentence or name of which only the first letter becomes small.</summary>
    /// <param name="text">As it stands alone.</param>
    public static string FirstSmall(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length == 0 || Languages.Current.CapitalNouns ? text : char.ToLowerInvariant(text[0]) + text[1..];
    }
}
