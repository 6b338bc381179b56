using System.Globalization;
using System.Text;

namespace Foundress.Book.Importing;

/// <summary>The name of an apiary or colony, and notes.</summary>
public static class NameField
{
    /// <summary>Longest name, in characters.</summary>
    public const int GreatestName = 80;

    /// <summary>Longest note, in characters.</summary>
    public const int GreatestNote = 2_000;

    private const char Unreadable = '\uFFFD';

    /// <summary>Reads a name.</summary>
    /// <param name="text">The text; blanks around it are dropped.</param>
    /// <param name="name">The name.</param>
    /// <returns>Null on success, otherwise what is wrong and how to put it right.</returns>
    public static string? Read(string text, out string name)
    {
        name = text.Trim();
        if (name.Length == 0)
            return "The name is missing.";
        if (name.Length > GreatestName)
            return Invariant($"The name is {name.Length} characters long; at most {GreatestName} are taken.");
        return CheckCharacters(name, lineBreaks: false);
    }

    /// <summary>Reads a note.</summary>
    /// <param name="text">The text; blanks around it are dropped.</param>
    /// <param name="note">The note; null when there is none.</param>
    /// <returns>Null on success, otherwise what is wrong and how to put it right.</returns>
    public static string? ReadNote(string text, out string? note)
    {
        text = text.Trim();
        note = text.Length == 0 ? null : text;
        if (text.Length > GreatestNote)
            return Invariant($"The note is {text.Length} characters long; at most {GreatestNote} are taken.");
        return CheckCharacters(text, lineBreaks: true);
    }

    /// <summary>The form names are compared in: two names with the same key are the same name to a keeper.</summary>
    public static string Key(string name) => name.Trim().Normalize(NormalizationForm.FormC).ToUpperInvariant();

    private static string? CheckCharacters(string text, bool lineBreaks)
    {
        foreach (var character in text)
        {
            if (character == Unreadable || char.IsSurrogate(character) && !IsWhole(text))
                return "Some characters could not be read: save the file as UTF-8.";
            if (char.IsControl(character) && !(lineBreaks && character is '\r' or '\n' or '\t'))
                return Invariant($"It holds a control character (U+{(int)character:X4}): take it out.");
        }

        return null;
    }

    private static bool IsWhole(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (!char.IsSurrogate(text[i]))
                continue;
            if (i + 1 >= text.Length || !char.IsSurrogatePair(text[i], text[i + 1]))
                return false;
            i++;
        }

        return true;
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
