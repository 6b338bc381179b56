using System.Globalization;
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
            return "Write the mites of each pass, for example 18;2.";
        if (parts.Length > JarLimits.MostPasses)
            return string.Create(CultureInfo.InvariantCulture, $"{parts.Length} passes are given; at most {JarLimits.MostPasses} are taken.");
        var counts = new int[parts.Length];
        for (var i = 0; i < parts.Length; i++)
        {
            if (MitesField.Read(parts[i], out counts[i]) is { } problem)
                return string.Create(CultureInfo.InvariantCulture, $"Pass {i + 1} ('{parts[i]}'): {problem}");
        }

        if (counts.Sum() > JarLimits.MostMites)
            return $"No jar gives more than {JarLimits.MostMites} mites: check the columns.";
        passes = counts;
        return null;
    }
}
