namespace Foundress.Book.Importing;

/// <summary>The measure bees were taken with, by its id; may be empty.</summary>
public static class MeasureField
{
    /// <summary>Reads a measure.</summary>
    /// <param name="text">The text; blanks around it and case do not matter.</param>
    /// <param name="known">Ids of the measures there are.</param>
    /// <param name="measure">The id; null when the text is empty.</param>
    /// <returns>Null on success, otherwise what is wrong and how to put it right.</returns>
    public static string? Read(string text, IReadOnlyCollection<string> known, out string? measure)
    {
        measure = text.Trim().ToLowerInvariant() is { Length: > 0 } id ? id : null;
        return measure is null || known.Contains(measure)
            ? null
            : FieldTexts.FormatMeasureUnknown(string.Join(", ", known));
    }
}
