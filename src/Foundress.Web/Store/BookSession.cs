using Foundress.Book;
using Foundress.Book.Exchanging;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;

namespace Foundress.Web.Store;

/// <summary>
/// The book that is open in this tab: its ledger in memory, its entries on this device. A record counts as kept only once
/// the device has it on its disk.
/// </summary>
/// <param name="store">The device's store.</param>
/// <param name="time">The wall clock.</param>
/// <param name="ids">Where new ids come from.</param>
public sealed class BookSession(IEntryStore store, TimeProvider time, IIdSource ids) : IOpenBook, IDisposable
{
    private readonly HybridClock _clock = new(time);
    private readonly SemaphoreSlim _reading = new(1, 1);
    private Ledger _ledger = new();
    private int _position;

    /// <summary>Told after the book, the author or the operation has changed.</summary>
    public event Action? Changed;

    /// <summary>Told after this tab has written entries of its own: how many.</summary>
    public event Action<int>? Written;

    /// <summary>The operation whose book is open.</summary>
    public string Operation { get; private set; } = Operations.Home;

    /// <summary>Whether the open book is the invented one.</summary>
    public bool IsDemo => Operation == Operations.Demo;

    /// <summary>The seed the open invented book was made from on this device; null for another book, or one a server made.</summary>
    public string? DemoSeed { get; private set; }

    /// <summary>In whose name records are written.</summary>
    public string Author { get; private set; } = "keeper";

    /// <summary>What the open book says today.</summary>
    public BookState State => _ledger.State;

    /// <summary>The number of entries in the open book.</summary>
    public int Count => _ledger.Count;

    /// <summary>The device's clock.</summary>
    public HybridClock Clock => _clock;

    /// <summary>Every entry of the open book, in its order.</summary>
    public IEnumerable<Entry> Entries => _ledger.Entries;

    /// <summary>The entries with what they come to.</summary>
    public Ledger Ledger => _ledger;

    /// <summary>Rows in this device's store that hold no readable entry.</summary>
    public int Broken { get; private set; }

    /// <summary>Where new ids come from, for apiaries, colonies and rounds.</summary>
    public IIdSource Ids => ids;

    /// <summary>This device's own id; empty before the book is open.</summary>
    public string Device { get; private set; } = string.Empty;

    /// <summary>Today by the device's own calendar.</summary>
    public DateOnly Today => DateOnly.FromDateTime(time.GetLocalNow().DateTime);

    /// <summary>The apiaries this device takes of the open book; null when it takes the whole.</summary>
    public IReadOnlySet<ApiaryId>? Only => _ledger.Only;

    /// <summary>Opens the book that was open last on this device.</summary>
    /// <exception cref="StoreException">The device's store cannot be read.</exception>
    public async Task OpenAsync()
    {
        // Before anything is read, so that nothing another tab tells meanwhile is missed.
        store.Listen(operationChanged => _ = FollowAsync(operationChanged));
        Device = await store.FirstAsync("device", ids.Next().ToString("N")[20..]);
        Author = await store.GetAsync("author") ?? Author;
        await ExchangeRound.RemindAsync(store, _clock);
        var operation = await store.GetAsync("operation") ?? Operations.Home;
        await LoadAsync(operation);
    }

    /// <summary>Opens another book, and remembers to open it next time.</summary>
    public async Task SwitchAsync(string operation)
    {
        await store.SetAsync("operation", operation);
        await LoadAsync(operation);
        store.Tell("*");
    }

    /// <summary>Sets in whose name records are written from now on, 1 to 200 characters.</summary>
    public async Task SetAuthorAsync(string author)
    {
        await store.SetAsync("author", author);
        Author = author;
        Changed?.Invoke();
        store.Tell("*");
    }

    /// <summary>Writes a record down. When this returns, it is on the device's disk.</summary>
    /// <param name="record">The record.</param>
    /// <param name="draft">The draft it was written from, which goes in the same step; null for none.</param>
    /// <exception cref="StoreException">The device could not keep it; the book is unchanged.</exception>
    public async Task<Entry> WriteAsync(Record record, string? draft = null) => (await WriteAsync([record], draft))[0];

    /// <summary>Writes several records down together: all of them or none.</summary>
    /// <param name="records">The records.</param>
    /// <param name="draft">The draft they were written from, which goes in the same step; null for none.</param>
    /// <exception cref="StoreException">The device could not keep them; the book is unchanged.</exception>
    public async Task<IReadOnlyList<Entry>> WriteAsync(IReadOnlyList<Record> records, string? draft = null)
    {
        var scribe = new Scribe(Operation, Author, Device, _clock, ids);
        var ledger = _ledger;
        // Who founds an apiary looks after it.
        if (ledger.Only is { } only && records.OfType<ApiaryRecord>().Select(record => record.Apiary).Where(id => !ledger.State.Apiaries.ContainsKey(id)).ToArray() is { Length: > 0 } founded)
            await TakeOnlyAsync([.. only.Union(founded)]);
        var entries = records.Select(scribe.Write).ToList();
        await store.AppendAsync(scribe.Operation, entries, pending: true, draft);
        // The book may have been read anew meanwhile.
        (scribe.Operation == Operation ? _ledger : ledger).Add(entries);
        Changed?.Invoke();
        store.Tell(scribe.Operation);
        Written?.Invoke(entries.Count);
        return entries;
    }

    /// <summary>Strikes an entry out, with the reason. Striking a strike brings the first entry back.</summary>
    /// <exception cref="StoreException">The device could not keep the strike; the book is unchanged.</exception>
    public Task<Entry> StrikeAsync(EntryId entry, string reason) => WriteAsync(new Strike(entry, reason));

    /// <summary>Takes in entries from elsewhere: the server or a file. They are on the device's disk when this returns.</summary>
    /// <param name="operation">The operation they were asked for. Entries of another one are passed over.</param>
    /// <param name="entries">The entries.</param>
    /// <param name="pending">True when the server still has to be given them.</param>
    /// <returns>How many were new to the open book.</returns>
    public async Task<int> TakeInAsync(string operation, IEnumerable<Entry> entries, bool pending)
    {
        var own = entries.Where(entry => entry.Operation == operation).ToList();
        if (own.Count == 0)
            return 0;
        await store.AppendAsync(operation, own, pending);
        if (operation != Operation)
            return 0;
        var added = Take(own);
        if (added == 0)
            return 0;
        Changed?.Invoke();
        store.Tell(operation);
        return added;
    }

    /// <summary>Sets what this device takes from now on. What it holds already stays.</summary>
    /// <param name="apiaries">The apiaries; none for the whole book.</param>
    public async Task TakeOnlyAsync(IReadOnlyCollection<ApiaryId> apiaries)
    {
        var operation = Operation;
        await new TakenParts(store, operation).ChooseAsync(apiaries);
        // Another tab may have opened another book meanwhile.
        if (operation == Operation)
            _ledger.Only = apiaries.Count == 0 ? null : apiaries.ToHashSet();
        Changed?.Invoke();
        store.Tell("*");
    }

    /// <summary>Drops what the server holds from this device; the next exchange takes what was chosen again from the start.</summary>
    public async Task DropCopiedAsync()
    {
        var operation = Operation;
        var parts = new TakenParts(store, operation);
        // Before, so that a break leaves nothing unread; after, so that what another tab took meanwhile and lost is read again.
        await parts.BeginAnewAsync(_clock);
        await store.DropCopiedAsync(operation);
        await parts.BeginAnewAsync(_clock);
        if (operation == Operation)
            await LoadAsync(operation);
        store.Tell("*");
    }

    /// <summary>Removes the invented book from this device and opens the keeper's own.</summary>
    public async Task RemoveDemoAsync()
    {
        await store.ForgetAsync(Operations.Demo);
        await store.SetAsync(ExchangeRound.CursorKey(Operations.Demo), null);
        await store.SetAsync("demo", "removed");
        await store.SetAsync(DemoDoor.SeedKey, null);
        await SwitchAsync(Operations.Home);
    }

    /// <inheritdoc/>
    public void Dispose() => _reading.Dispose();

    private async Task LoadAsync(string operation)
    {
        await _reading.WaitAsync();
        try
        {
            var stored = await store.ReadAfterAsync(operation, 0);
            var only = TakenParts.Read(await new TakenParts(store, operation).ChoiceAsync());
            (Operation, _ledger, _position, Broken) = (operation, new Ledger { Only = only.Count == 0 ? null : only.ToHashSet() }, stored.Last, stored.Broken);
            DemoSeed = IsDemo ? await store.GetAsync(DemoDoor.SeedKey) : null;
            Take(stored.Entries);
            // What was written while the rest was read went to the book that stood before.
            await ReadOnAsync();
        }
        finally
        {
            _reading.Release();
        }

        Changed?.Invoke();
    }

    // Another tab of this browser has written: read what it added, or follow it to another book.
    private async Task FollowAsync(string operation)
    {
        try
        {
            if (operation == "*")
            {
                Author = await store.GetAsync("author") ?? Author;
                var now = await store.GetAsync("operation") ?? Operations.Home;
                await LoadAsync(now);
                return;
            }

            if (operation != Operation)
                return;
            await _reading.WaitAsync();
            try
            {
                await ReadOnAsync();
            }
            finally
            {
                _reading.Release();
            }

            Changed?.Invoke();
        }
        catch (StoreException)
        {
            // Nothing is lost: the entries are in the store, and the next news or the next start reads them.
            return;
        }
    }

    // Only while reading is held.
    private async Task ReadOnAsync()
    {
        var stored = await store.ReadAfterAsync(Operation, _position);
        _position = stored.Last;
        Broken += stored.Broken;
        Take(stored.Entries);
    }

    private int Take(IReadOnlyList<Entry> entries)
    {
        foreach (var entry in entries)
            _clock.Witness(entry.Clock);
        return _ledger.Add(entries).Count;
    }
}
