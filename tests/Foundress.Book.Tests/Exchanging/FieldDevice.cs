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
        Ledger = new Ledger { Only = Chosen() is { Count: > 0 } chosen ? chosen.ToHashSet() : null };
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

    /// <summary>Which apiaries it takes; none for the whole book.</summary>
    public IReadOnlyList<ApiaryId> Chosen() => TakenParts.Read(new TakenParts(Store, "home").ChoiceAsync().GetAwaiter().GetResult());

    /// <summary>Chooses what it takes.</summary>
    public async Task ChooseAsync(params ApiaryId[] apiaries)
    {
        await new TakenParts(Store, "home").ChooseAsync(apiaries);
        Ledger.Only = apiaries.Length == 0 ? null : apiaries.ToHashSet();
    }

    /// <summary>Drops what the server holds, as the browser's store does it.</summary>
    public async Task ForgetCopiedAsync()
    {
        var parts = new TakenParts(Store, "home");
        await parts.BeginAnewAsync(Clock);
        await Store.ForgetCopiedAsync();
        await parts.BeginAnewAsync(Clock);
        Restart();
    }

    /// <summary>How many entries the server offered when it was last asked, while this device waits for its keeper's choice.</summary>
    public long? Offered { get; private set; }

    /// <summary>One exchange; false when the line broke.</summary>
    public async Task<bool> ExchangeAsync()
    {
        try
        {
            var round = new ExchangeRound(_server, Store, this);
            await round.MeetAsync();
            await round.ExchangeAsync("home");
            Offered = round.Offered;
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
