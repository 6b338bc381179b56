using Foundress.Book.Journal;
using Foundress.Book.State;

namespace Foundress.Book;

/// <summary>
/// One operation's book: the set of its entries, in order, and what they say today. Adding entries is set union by id, so
/// it may be repeated, in any order, and cut off anywhere.
/// </summary>
/// <remarks>Not safe for concurrent use; <see cref="State"/> once read is immutable and may be shared.</remarks>
public sealed class Ledger
{
    private readonly Dictionary<EntryId, ReadEntry> _byId = [];
    private List<ReadEntry> _ordered = [];
    private BookState? _state = BookState.Empty;

    /// <summary>The number of entries.</summary>
    public int Count => _byId.Count;

    /// <summary>Every entry in the book's order.</summary>
    public IEnumerable<Entry> Entries
    {
        get
        {
            foreach (var read in _ordered)
                yield return read.Entry;
        }
    }

    /// <summary>What the book says today. Worked out when first asked for after a change.</summary>
    public BookState State => _state ??= BookFold.Fold(_ordered, Only);

    /// <summary>
    /// The apiaries that are looked after here; null for all. A device that takes only parts of a large book holds entries of
    /// other apiaries too, but not all of them: what they say of these is no answer, and so they are not listed.
    /// </summary>
    public IReadOnlySet<ApiaryId>? Only
    {
        get;
        set
        {
            field = value;
            _state = null;
        }
    }

    /// <summary>Whether the book holds an entry.</summary>
    public bool Contains(EntryId id) => _byId.ContainsKey(id);

    /// <summary>The entry with an id, or null.</summary>
    public Entry? Find(EntryId id) => _byId.TryGetValue(id, out var read) ? read.Entry : null;

    /// <summary>Adds entries; those already held are passed over.</summary>
    /// <returns>The entries that were new, in the order given.</returns>
    /// <remarks>
    /// Should two devices ever give one id to different entries, the one that comes first in the book's order (then by its
    /// text) is kept everywhere, so that all devices still agree.
    /// </remarks>
    public IReadOnlyList<Entry> Add(IEnumerable<Entry> entries)
    {
        var added = new List<Entry>();
        var replaced = false;
        foreach (var entry in entries)
        {
            if (_byId.TryGetValue(entry.Id, out var known))
            {
                if (known.Entry == entry || !ComesBefore(entry, known.Entry))
                    continue;
                replaced = true;
            }

            _byId[entry.Id] = ReadEntry.Of(entry);
            added.Add(entry);
        }

        if (added.Count == 0)
            return added;
        if (replaced || added.Count > 1 || (_ordered.Count > 0 && added[0] < _ordered[^1].Entry))
        {
            _ordered = [.. _byId.Values];
            _ordered.Sort((left, right) => left.Entry.CompareTo(right.Entry));
        }
        else
        {
            _ordered.Add(_byId[added[0].Id]);
        }

        _state = null;
        return added;
    }

    /// <summary>Of two different entries that were given the same id, whether the left one is held everywhere.</summary>
    public static bool ComesBefore(Entry left, Entry right)
    {
        var order = left.CompareTo(right);
        return order < 0 || (order == 0 && string.CompareOrdinal(EntryJson.Write(left), EntryJson.Write(right)) < 0);
    }
}
