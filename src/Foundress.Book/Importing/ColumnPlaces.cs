namespace Foundress.Book.Importing;

/// <summary>Which column of a file holds what.</summary>
internal sealed class ColumnPlaces
{
    private readonly Dictionary<string, int> _at = new(StringComparer.Ordinal);

    /// <exception cref="ImportFormatException">A column is missing or there twice.</exception>
    internal ColumnPlaces(IReadOnlyList<string> header, IReadOnlyList<string> required, IReadOnlyList<string> optional, IReadOnlyDictionary<string, string> aliases)
    {
        var unknown = new List<string>();
        for (var i = 0; i < header.Count; i++)
        {
            var name = JarColumns.Normal(header[i]);
            name = aliases.GetValueOrDefault(name, name);
            if (name.Length == 0 || name is JarColumns.Row or JarColumns.Problem)
                continue;
            if (!required.Contains(name) && !optional.Contains(name))
                unknown.Add(header[i]);
            else if (!_at.TryAdd(name, i))
                throw new ImportFormatException($"The column '{name}' is there twice (columns {_at[name] + 1} and {i + 1}): take one out.");
        }

        Unknown = unknown;
        var missing = required.Where(name => !_at.ContainsKey(name)).ToArray();
        if (missing.Length > 0)
            throw new ImportFormatException($"The {(missing.Length == 1 ? "column" : "columns")} {string.Join(", ", missing)} {(missing.Length == 1 ? "is" : "are")} missing. Needed: {string.Join(", ", required)}.");
    }

    /// <summary>Columns that are not known.</summary>
    internal IReadOnlyList<string> Unknown { get; }

    /// <summary>The text of a column in a row, trimmed; empty when the file has none.</summary>
    internal string Text(string column, IReadOnlyList<string> fields) => _at.TryGetValue(column, out var index) && index < fields.Count ? fields[index].Trim() : string.Empty;
}
