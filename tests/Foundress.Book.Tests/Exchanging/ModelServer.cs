using Foundress.Book.Exchanging;
using Foundress.Book.Journal;
using Foundress.Book.Parts;

namespace Foundress.Book.Tests.Exchanging;

/// <summary>
/// What the server promises, in the fewest words: entries in the order of commit, one for each id, a new incarnation with
/// every restore. The real server is held to the same in the tests of the server.
/// </summary>
internal sealed class ModelServer(TimeProvider world)
{
    private readonly List<(SortedDictionary<long, Entry> Rows, long Next)> _backups = [];
    private SortedDictionary<long, Entry> _rows = [];
    private Dictionary<EntryId, long> _places = [];
    private long _next = 1;
    private int _life = 1;
    private (long Next, int Life, BookParts Parts)? _parts;

    public IEnumerable<Entry> Entries => _rows.Values;

    public string Incarnation => $"life {_life}";

    /// <summary>How many entries it says it has; null to say nothing.</summary>
    public long? Told { get; set; }

    public AboutReply About() => new("model", Incarnation, false, world.GetUtcNow(), Entries: Told is { } told ? new Dictionary<string, long> { ["home"] = told } : null);

    public PushReply Push(IReadOnlyList<Entry> entries)
    {
        var refused = new Dictionary<EntryId, string>();
        foreach (var entry in entries)
        {
            if (entry.Clock.Milliseconds > world.GetUtcNow().ToUnixTimeMilliseconds() + HybridClock.Tolerance)
            {
                refused[entry.Id] = "clock";
                continue;
            }

            if (_places.TryGetValue(entry.Id, out var place))
            {
                if (_rows[place] == entry || !Ledger.ComesBefore(entry, _rows[place]))
                    continue;
                _rows.Remove(place);
            }

            _rows[_next] = entry;
            _places[entry.Id] = _next++;
        }

        return new PushReply(refused, Incarnation);
    }

    public PulledEntries Pull(long after, int limit)
    {
        var rows = _rows.Where(row => row.Key > after).Take(limit + 1).ToArray();
        var page = rows.Take(limit).ToArray();
        return new PulledEntries([.. page.Select(row => row.Value)], page.Length == 0 ? after : page[^1].Key, rows.Length > limit, Incarnation);
    }

    /// <summary>One apiary's part; null when nothing is known of it.</summary>
    public PulledEntries? PullPart(ApiaryId apiary, long after, int limit)
    {
        if (!Parts.Apiaries.Contains(apiary))
            return null;
        var places = Parts.Of(apiary).Where(place => place > after).Take(limit + 1).ToArray();
        var page = places.Take(limit).ToArray();
        return new PulledEntries([.. page.Select(place => _rows[place])], page.Length == 0 ? after : page[^1], places.Length > limit, Incarnation, Parts.MembersOf(apiary));
    }

    /// <summary>Which entries each apiary needs, as the book stands.</summary>
    public BookParts Parts
    {
        get
        {
            if (_parts is { } kept && kept.Next == _next && kept.Life == _life)
                return kept.Parts;
            var parts = new BookParts();
            foreach (var (place, entry) in _rows)
                parts.Add(entry, place);
            _parts = (_next, _life, parts);
            return parts;
        }
    }

    public Entry At(long place) => _rows[place];

    public void BackUp() => _backups.Add((new(_rows), _next));

    /// <summary>Puts one of the backups back, an empty book if there is none. Places are given again from there.</summary>
    public void Restore(int which)
    {
        (_rows, _next) = _backups.Count == 0 ? ([], 1) : _backups[which % _backups.Count];
        _rows = new(_rows);
        _places = _rows.ToDictionary(row => row.Value.Id, row => row.Key);
        _life++;
    }
}
