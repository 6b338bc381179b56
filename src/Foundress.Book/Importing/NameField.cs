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
            return FieldTexts.NameMissing;
        if (name.Length > GreatestName)
            return FieldTexts.FormatNameTooLong(name.Length, GreatestName);
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
            return FieldTexts.FormatNoteTooLong(text.Length, GreatestNote);
        return CheckCharacters(text, lineBreaks: true);
    }

    /// <summary>The form names are compared in: two names with the same key are the same name to a keeper.</summary>
    public static string Key(string name) => name.Trim().Normalize(NormalizationForm.FormC).ToUpperInvariant();

    private static string? CheckCharacters(string text, bool lineBreaks)
    {
        foreach (var character in text)
        {
            if (character == Unreadable || char.IsSurrogate(character) && !IsWhole(text))
                return FieldTexts.CharactersUnread;
            if (char.IsControl(character) && !(lineBreaks && character is '\r' or '\n' or '\t'))
                return FieldTexts.FormatControlCharacter(((int)character).ToString("X4", CultureInfo.InvariantCulture));
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
}
