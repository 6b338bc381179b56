namespace Foundress.Book.Wording;

/// <summary>Texts that differ with a number: "1 mite", "2 mites". The forms stand in one text, parted by ␞, in the order of the language's plural rules (docs/language.md).</summary>
public static class Plural
{
    /// <summary>What parts the forms of a text.</summary>
    public const char Mark = '␞';

    /// <summary>The form of a text for a number, in the language of this thread's reader.</summary>
    /// <param name="number">The number the form goes with.</param>
    /// <param name="forms">All forms, filled in already.</param>
    public static string Pick(double number, string forms)
    {
        ArgumentNullException.ThrowIfNull(forms);
        var written = forms.Split(Mark);
        return written[Math.Min(Languages.Current.FormFor(number), written.Length - 1)];
    }
}
