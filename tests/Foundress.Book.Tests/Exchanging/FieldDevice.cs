using Foundress.Book.Exchanging;
using Foundress.Book.Journal;
using Record = Foundress.Book.Records.Record;

namespace Foundress.Book.Tests.Exchanging;

/// <summary>A phone, or one tab of it: its own wall clock, its open book, and the store that outlives both.</summary>
internal sealed class FieldDevice : IOpenBook
{
    private readonly string _name;
    private readonly IIdSource _ids;
    private readonly SkewedTime _time;
    private readonly IBookServer _server;
    private Scribe _scribe = null!;

    public FieldDevice(string name, IIdSource ids, SkewedTime time, IBookServer server, MemoryStore? store = null)
    {
        (_name, _ids, _time, _server, Store) = (name, ids, time, server, store ?? new MemoryStore());
        Restart();
    }

    public MemoryStore Store { get; }

    public SkewedTime Time => _time;

    public Ledger Ledger { get; private set; } = new();

    public HybridClock Clock { get; private set; } = null!;

    public IEnumerable<Entry> Entries => Ledger.Entries;

    /// <summary>The program begins again: only what the store holds is left.</summary>
    public void Restart()
    {
        Store.Before = () => { };
        Clock = new HybridClock(_time);
        ExchangeRound.RemindAsync(Store, Clock).GetAwaiter().GetResult();
        _scribe = new Scribe("home", $"keeper of {_name}", _name, Clock, _ids);
        Ledger = new Ledger();
        Take([.. Store.Entries]);
        Store.RetryRefusedAsync("home").GetAwaiter().GetResult();
    }

    /// <summary>Writes a record; it counts as written once the store has it.</summary>
    public async Task<Entry> WriteAsync(Record record)
    {
        var entry = _scribe.Write(record);
        await Store.AppendAsync([entry], pending: true);
        Ledger.Add([entry]);
        return entry;
    }

    public async Task<int> TakeInAsync(string operation, IEnumerable<Entry> entries, bool pending)
    {
        var own = entries.ToArray();
        await Store.AppendAsync(own, pending);
        return Take(own);
    }

    /// <summary>One exchange; false when the line broke.</summary>
    public async Task<bool> ExchangeAsync()
    {
        try
        {
            var round = new ExchangeRound(_server, Store, this);
            await round.MeetAsync(["home"]);
            await round.ExchangeAsync("home");
            return true;
        }
        catch (ExchangeException)
        {
            return false;
        }
    }

    private int Take(IReadOnlyList<Entry> entries)
    {
        foreach (var entry in entries)
            Clock.Witness(entry.Clock);
        return Ledger.Add(entries).Count;
    }
}
