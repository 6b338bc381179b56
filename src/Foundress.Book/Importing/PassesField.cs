using Foundress.Book.Rules;

namespace Foundress.Book.Importing;

/// <summary>Mites found in each pass over the same bees, first to last: <c>18;2</c>. One to ten whole numbers.</summary>
public static class PassesField
{
    private static readonly char[] Marks = [';', ',', '+', ' '];

    /// <summary>Reads the passes.</summary>
    /// <param name="text">Numbers with a semicolon, comma, plus sign or blank between them.</param>
    /// <param name="passes">The counts.</param>
    /// <returns>Null on success, otherwise what is wrong and how to put it right.</returns>
    public static string? Read(string text, out IReadOnlyList<int> passes)
    {
        passes = [];
        var parts = text.Split(Marks, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (parts.Length == 0)
            return FieldTexts.PassesMissing;
        if (parts.Length > JarLimits.MostPasses)
            return FieldTexts.FormatPassesTooMany(parts.Length, JarLimits.MostPasses);
        var counts = new int[parts.Length];
        for (var i = 0; i < parts.Length; i++)
        {
            if (MitesField.Read(parts[i], out counts[i]) is { } problem)
                return FieldTexts.FormatPassWrong(i + 1, parts[i], problem);
        }

        if (counts.Sum() > JarLimits.MostMites)
            return FieldTexts.FormatMitesTooMany(JarLimits.MostMites);
        passes = counts;
        return null;
    }
}
