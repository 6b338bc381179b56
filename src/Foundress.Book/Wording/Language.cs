using System.Globalization;

namespace Foundress.Book.Wording;

/// <summary>A language that all texts are written in.</summary>
/// <param name="Code">The code of ISO 639-1, for example <c>de</c>.</param>
/// <param name="OwnName">What it calls itself.</param>
/// <param name="FormFor">Which form of a noun goes with a number, from 0, in the order of <see cref="Plural"/>.</param>
/// <param name="CapitalNouns">Whether nouns keep their capital letter inside a sentence.</param>
public sealed record Language(string Code, string OwnName, Func<double, int> FormFor, bool CapitalNouns = false)
{
    /// <summary>The culture in which this language's days are written: the reader's own where it is of this language, such as Austria's.</summary>
    /// <param name="own">The reader's own culture.</param>
    public CultureInfo Near(CultureInfo own)
    {
        ArgumentNullException.ThrowIfNull(own);
        return own.TwoLetterISOLanguageName == Code ? own : CultureInfo.GetCultureInfo(Code);
    }
}
