namespace Foundress.Book.Importing;

/// <summary>The id of a counting method.</summary>
public static class MethodField
{
    /// <summary>Reads a method's id.</summary>
    /// <param name="text">The text; case and blanks around it do not matter, and blanks within it count as hyphens.</param>
    /// <param name="known">The ids there are.</param>
    /// <param name="method">The id as it is known.</param>
    /// <returns>Null on success, otherwise what is wrong, with the nearest id.</returns>
    public static string? Read(string text, IReadOnlyCollection<string> known, out string method)
    {
        method = string.Empty;
        var wanted = text.Trim().ToLowerInvariant().Replace(' ', '-').Replace('_', '-');
        var nearest = string.Empty;
        var least = int.MaxValue;
        foreach (var id in known)
        {
            if (string.Equals(id, wanted, StringComparison.OrdinalIgnoreCase))
            {
                method = id;
                return null;
            }

            var distance = wanted.Length > 64 ? int.MaxValue : Distance(wanted, id);
            if (distance < least)
                (least, nearest) = (distance, id);
        }

        var all = string.Join(", ", known);
        if (wanted.Length == 0)
            return FieldTexts.FormatMethodMissing(all);
        return least <= Math.Max(2, nearest.Length / 3)
            ? FieldTexts.FormatMethodMeant(nearest, all)
            : FieldTexts.FormatMethodUnknown(all);
    }

    // Levenshtein distance: letters to insert, drop or change (Levenshtein 1966).
    private static int Distance(string left, string right)
    {
        var row = new int[right.Length + 1];
        for (var j = 0; j < row.Length; j++)
            row[j] = j;
        for (var i = 1; i <= left.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j < row.Length; j++)
            {
                var above = row[j];
                row[j] = Math.Min(Math.Min(above, row[j - 1]) + 1, diagonal + (left[i - 1] == right[j - 1] ? 0 : 1));
                diagonal = above;
            }
        }

        return row[^1];
    }
}
