using Foundress.Book.Exchanging;
using Foundress.Book.Journal;

namespace Foundress.Book.Tests.Exchanging;

/// <summary>A device's store, with the rules of the browser's: what a call did stays, and the program may end before any call.</summary>
internal sealed class MemoryStore : IExchangeStore
{
    private readonly Dictionary<string, string> _settings = [];
    private readonly Dictionary<EntryId, Row> _rows = [];
    private long _next;

    /// <summary>Called before every call; throws when the program is to end there.</summary>
    public Action Before { get; set; } = () => { };

    public IEnumerable<Entry> Entries => _rows.Values.Select(row => row.Entry);

    public Task AppendAsync(IEnumerable<Entry> entries, bool pending)
    {
        Before();
        foreach (var entry in entries)
        {
            if (!_rows.TryGetValue(entry.Id, out var held) || (held.Entry != entry && Ledger.ComesBefore(entry, held.Entry)))
                _rows[entry.Id] = new Row(_next++, entry) { Pending = pending };
        }

        return Task.CompletedTask;
    }

    /// <summary>Drops what the server holds.</summary>
    public Task ForgetCopiedAsync()
    {
        Before();
        foreach (var (id, _) in _rows.Where(row => row.Value is { Pending: false, Refused: null }).ToArray())
            _rows.Remove(id);
        return Task.CompletedTask;
    }

    public Task<IReadOnlyList<Entry>> ReadPendingAsync(string operation, int limit)
    {
        Before();
        return Task.FromResult<IReadOnlyList<Entry>>([.. _rows.Values.Where(row => row.Pending).OrderBy(row => row.Key).Take(limit).Select(row => row.Entry)]);
    }

    public Task SettleAsync(string operation, IEnumerable<(EntryId Id, string? Refused)> outcomes)
    {
        Before();
        foreach (var (id, refused) in outcomes)
        {
            if (_rows.TryGetValue(id, out var row))
                (row.Pending, row.Refused) = (false, refused);
        }

        return Task.CompletedTask;
    }

    public Task UnsettleAsync(string operation)
    {
        Before();
        foreach (var row in _rows.Values)
            (row.Pending, row.Refused) = (true, null);
        return Task.CompletedTask;
    }

    public Task RetryRefusedAsync(string operation)
    {
        Before();
        foreach (var row in _rows.Values.Where(row => row.Refused is not null))
            (row.Pending, row.Refused) = (true, null);
        return Task.CompletedTask;
    }

    public Task<string?> GetAsync(string key)
    {
        Before();
        return Task.FromResult(_settings.GetValueOrDefault(key));
    }

    public Task SetAsync(string key, string? value)
    {
        Before();
        if (value is null)
            _settings.Remove(key);
        else
            _settings[key] = value;
        return Task.CompletedTask;
    }

    public IReadOnlyList<EntryId> Refused => [.. _rows.Values.Where(row => row.Refused is not null).Select(row => row.Entry.Id)];

    private sealed class Row(long key, Entry entry)
    {
        public long Key => key;

        public Entry Entry => entry;

        public bool Pending { get; set; }

        public string? Refused { get; set; }
    }
}
