using Foundress.Book.Wording;

namespace Foundress.Book.Importing;

/// <summary>Which column of a file holds what.</summary>
internal sealed class ColumnPlaces
{
    private readonly Dictionary<string, int> _at = new(StringComparer.Ordinal);

    /// <summary>Finds the columns of a file.</summary>
    /// <param name="header">The columns as they are written in it.</param>
    /// <param name="required">Names of those that must be there.</param>
    /// <param name="optional">Names of those that may be.</param>
    /// <param name="needed">What is said behind the names of missing columns: which are needed.</param>
    /// <param name="aliases">Other names of columns; null for none.</param>
    /// <param name="passedOver">Columns that are known and not read; null for those of a file of rejected rows.</param>
    /// <exception cref="ImportFormatException">A column is missing or there twice.</exception>
    internal ColumnPlaces(
        IReadOnlyList<string> header, IReadOnlyList<string> required, IReadOnlyList<string> optional, string needed,
        IReadOnlyDictionary<string, string>? aliases = null, IReadOnlyList<string>? passedOver = null)
    {
        var known = passedOver ?? [JarColumns.Row, JarColumns.Problem];
        var unknown = new List<string>();
        for (var i = 0; i < header.Count; i++)
        {
            var name = JarColumns.Normal(header[i]);
            name = aliases?.GetValueOrDefault(name, name) ?? name;
            if (name.Length == 0 || known.Contains(name))
                continue;
            if (!required.Contains(name) && !optional.Contains(name))
                unknown.Add(header[i]);
            else if (!_at.TryAdd(name, i))
                throw new ImportFormatException(ImportTexts.FormatColumnTwice(name, _at[name] + 1, i + 1));
        }

        Unknown = unknown;
        var missing = required.Where(name => !_at.ContainsKey(name)).ToArray();
        if (missing.Length > 0)
            throw new ImportFormatException($"{Plural.Pick(missing.Length, ImportTexts.FormatColumnsMissing(string.Join(", ", missing)))} {needed}");
    }

    /// <summary>Columns that are not known.</summary>
    internal IReadOnlyList<string> Unknown { get; }

    /// <summary>The text of a column in a row as it stands; empty when the file has none.</summary>
    internal string Raw(string column, IReadOnlyList<string> fields) => _at.TryGetValue(column, out var index) && index < fields.Count ? fields[index] : string.Empty;

    /// <summary>The same, trimmed.</summary>
    internal string Text(string column, IReadOnlyList<string> fields) => Raw(column, fields).Trim();
}
