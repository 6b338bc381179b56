using System.Collections;
using System.Diagnostics.CodeAnalysis;

namespace Foundress.Knowledge;

/// <summary>A fixed list of named entries, in the order of the data file, that can also be looked up by name.</summary>
/// <typeparam name="T">The kind of entry.</typeparam>
/// <remarks>Safe for concurrent use: immutable. Look-up by name does not depend on the number of entries.</remarks>
public sealed class Catalog<T> : IReadOnlyList<T>
    where T : class, IHasId
{
    private readonly T[] _entries;
    private readonly Dictionary<string, T> _byId;
    private readonly string _kind;

    internal Catalog(string kind, IEnumerable<T> entries)
    {
        _kind = kind;
        _entries = [.. entries];
        _byId = _entries.ToDictionary(e => e.Id, StringComparer.Ordinal);
    }

    /// <inheritdoc/>
    public int Count => _entries.Length;

    /// <inheritdoc/>
    public T this[int index] => _entries[index];

    /// <summary>The entry of that name.</summary>
    /// <exception cref="KnowledgeException">There is none; the message lists the names there are.</exception>
    public T this[string id] =>
        _byId.TryGetValue(id, out var entry)
            ? entry
            : throw new KnowledgeException($"There is no {_kind} named \"{id}\". Use one of: {string.Join(", ", _byId.Keys)}.");

    /// <summary>Every name, in the order of the data file.</summary>
    public IEnumerable<string> Ids => _entries.Select(e => e.Id);

    /// <summary>Looks an entry up without failing.</summary>
    /// <returns>False when there is no entry of that name, or <paramref name="id"/> is null.</returns>
    public bool TryGet(string? id, [NotNullWhen(true)] out T? entry)
    {
        entry = null;
        return id is not null && _byId.TryGetValue(id, out entry);
    }

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)_entries).GetEnumerator();

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => _entries.GetEnumerator();
}
