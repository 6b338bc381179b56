using System.Globalization;

namespace Foundress.Book.Wording;

/// <summary>The languages the program speaks. Which one a reader gets is the current thread's <see cref="CultureInfo.CurrentUICulture"/>; numbers and dates follow <see cref="CultureInfo.CurrentCulture"/>.</summary>
public static class Languages
{
    /// <summary>The language texts are written in first, and the one for readers of a language that is not there.</summary>
    public static Language English { get; } = new("en", "English", OneAndOther);

    /// <summary>All of them, English first.</summary>
    public static IReadOnlyList<Language> All { get; } = [English, new("de", "Deutsch", OneAndOther, CapitalNouns: true)];

    /// <summary>The language of this thread's reader.</summary>
    public static Language Current => Of(CultureInfo.CurrentUICulture);

    /// <summary>The language for a culture: its own, or English.</summary>
    public static Language Of(CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(culture);
        return All.FirstOrDefault(one => one.Code == culture.TwoLetterISOLanguageName) ?? English;
    }

    // Unicode CLDR 46, plural rules: English and German have "one" for 1 without decimals and "other" for the rest.
    private static int OneAndOther(double number) => number == 1 ? 0 : 1;
}
