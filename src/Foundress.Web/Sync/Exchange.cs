using System.Globalization;
using Foundress.Book.Exchanging;
using Foundress.Book.Journal;
using Foundress.Web.Shell;
using Foundress.Web.Store;

namespace Foundress.Web.Sync;

/// <summary>
/// Keeps this device and the server in step: at the start, when the app comes back to the front or the network returns,
/// shortly after a record is written, and when asked. It may be cut off anywhere and simply goes on next time.
/// </summary>
/// <param name="server">The server.</param>
/// <param name="store">This device's store.</param>
/// <param name="session">The open book.</param>
/// <param name="forms">Forms being filled in: the open book is not changed under them.</param>
/// <param name="time">The wall clock.</param>
public sealed class Exchange(BookServer server, IEntryStore store, BookSession session, DirtyForms forms, TimeProvider time)
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1.5);

    private readonly ExchangeRound _round = new(server, store, session);
    private Task? _run;
    private bool _again;
    private int _writes;
    private string? _readerOf;

    /// <summary>Told after any of the properties has changed.</summary>
    public event Action? Changed;

    /// <summary>How the last exchange went.</summary>
    public ExchangeState State { get; private set; }

    /// <summary>Why the last exchange failed; null when it did not.</summary>
    public string? Problem { get; private set; }

    /// <summary>Whether signing in is what the last exchange lacked.</summary>
    public bool NeedsSignIn { get; private set; }

    /// <summary>Whether the server has accounts, once it has answered.</summary>
    public bool HasAccounts { get; private set; }

    /// <summary>Whether this device's person may read the open book on the server and not record in it. Remembered, so that it is known in the field too.</summary>
    public bool ReadsOnly { get; private set; }

    /// <summary>When both sides last held the same entries, as far as this device takes them.</summary>
    public DateTimeOffset? LastDone { get; private set; }

    /// <summary>The server's version, once it has answered.</summary>
    public string? ServerVersion { get; private set; }

    /// <summary>Records kept on this device that the server has not been given yet.</summary>
    public int Pending { get; private set; }

    /// <summary>Records the server would not take. They stay on this device.</summary>
    public int Refused { get; private set; }

    /// <summary>How many entries the server has, while it waits for the keeper to say what of them this device takes; null otherwise.</summary>
    public long? Offered => _round.Offered;

    /// <summary>Reads the counts this device remembers and makes the first exchange.</summary>
    public async Task StartAsync()
    {
        // First, so that a store that fails below keeps nothing written later from being copied.
        session.Changed += () => _ = RecallReaderAsync();
        session.Written += entries => _ = SoonAsync(entries);
        try
        {
            if (long.TryParse(await store.GetAsync("exchanged"), CultureInfo.InvariantCulture, out var milliseconds))
                LastDone = DateTimeOffset.FromUnixTimeMilliseconds(milliseconds);
            await RecallReaderAsync();
            // What the server would not take may be taken now: it or this program may have been brought up to date since.
            await store.RetryRefusedAsync(session.Operation);
        }
        catch (StoreException error)
        {
            Fail(error);
        }

        await RunAsync();
    }

    /// <summary>Makes an exchange now. While one is under way, another follows it; this returns when that is over too.</summary>
    public Task RunAsync()
    {
        if (_run is { IsCompleted: false } running)
        {
            _again = true;
            return running;
        }

        return _run = UntilDoneAsync();
    }

    /// <summary>Gives the server everything again and asks it for everything: for a server that was set up anew.</summary>
    public async Task RunFromTheStartAsync()
    {
        await ExchangeRound.ForgetProgressAsync(store, session.Operation, session.Clock);
        await RunAsync();
    }

    /// <summary>Sets what this device takes from now on, and takes it. What it holds already stays.</summary>
    /// <param name="apiaries">The apiaries; none for the whole book.</param>
    public async Task TakeAsync(IReadOnlyCollection<ApiaryId> apiaries)
    {
        await session.TakeOnlyAsync(apiaries);
        await RunAsync();
    }

    /// <summary>
    /// Drops what the server holds from this device and takes what was chosen again. First all is given to the server as it is
    /// now: it may have been put back to a backup since the last exchange.
    /// </summary>
    /// <returns>Whether the rest was dropped; <see cref="State"/> then says whether what was chosen is back.</returns>
    public async Task<bool> MakeRoomAsync()
    {
        await RunAsync();
        if (State != ExchangeState.Done)
            return false;
        await session.DropCopiedAsync();
        await RunAsync();
        return true;
    }

    /// <summary>Removes the invented book from this device and from the server.</summary>
    public async Task RemoveDemoAsync()
    {
        await store.SetAsync("demo-on-server", "remove");
        await session.RemoveDemoAsync();
        await RunAsync();
    }

    // Another book may be open than before, with another role in it.
    private async Task RecallReaderAsync()
    {
        if (_readerOf == session.Operation)
            return;
        var operation = _readerOf = session.Operation;
        try
        {
            var reads = await store.GetAsync(ReadsOnlyKey(operation)) is not null;
            if (operation != session.Operation)
                return;
            ReadsOnly = reads;
        }
        catch (StoreException error)
        {
            _readerOf = null;
            Fail(error);
        }

        Changed?.Invoke();
    }

    private static string ReadsOnlyKey(string operation) => "reads-only:" + operation;

    private async Task UntilDoneAsync()
    {
        do
        {
            _again = false;
            await OnceAsync();
        }
        while (_again);
    }

    private async Task SoonAsync(int entries)
    {
        var mine = ++_writes;
        // Before they are counted on the disk: nothing says "copied" for a moment of what is only here.
        Pending += entries;
        Changed?.Invoke();
        try
        {
            await CountAsync(session.Operation);
        }
        catch (StoreException error)
        {
            Fail(error);
        }

        Changed?.Invoke();
        await Task.Delay(Pause, time);
        if (mine == _writes)
            await RunAsync();
    }

    private async Task OnceAsync()
    {
        State = ExchangeState.Working;
        Changed?.Invoke();
        var operation = session.Operation;
        try
        {
            await CountAsync(operation);
            var about = await _round.MeetAsync();
            (ServerVersion, HasAccounts) = (about.Version, about.Accounts);
            await DropServerDemoAsync();
            operation = await ChooseBookAsync(about);
            if (about.ReadsOnly is { } reads)
            {
                (ReadsOnly, _readerOf) = (reads.Contains(operation), operation);
                await store.SetAsync(ReadsOnlyKey(operation), ReadsOnly ? "yes" : null);
            }

            // Invented records that were made up on this device stay on it.
            if (session.DemoSeed is null)
            {
                if (await _round.BeginAsync(operation))
                {
                    await CountAsync(operation);
                    Changed?.Invoke();
                }

                await _round.ExchangeAsync(operation);
            }

            (State, Problem, NeedsSignIn, LastDone) = (ExchangeState.Done, null, false, time.GetUtcNow());
            await store.SetAsync("exchanged", LastDone.Value.ToUnixTimeMilliseconds().ToString(CultureInfo.InvariantCulture));
            await CountAsync(operation);
        }
        catch (Exception error) when (error is ExchangeException or StoreException)
        {
            Fail(error);
        }

        Changed?.Invoke();
    }

    private void Fail(Exception error) =>
        (State, Problem, NeedsSignIn) = (ExchangeState.Failed, error.Message, error is ExchangeException { NeedsSignIn: true });

    // A newcomer without records of their own is shown the invented book when the server offers one.
    private async Task<string> ChooseBookAsync(AboutReply about)
    {
        if (about.Demo && session is { IsDemo: false, Count: 0 } && !forms.Any
            && await store.GetAsync("operation") is null && await store.GetAsync("demo") is null)
            await session.SwitchAsync(Operations.Demo);
        return session.Operation;
    }

    private async Task DropServerDemoAsync()
    {
        if (await store.GetAsync("demo-on-server") != "remove")
            return;
        await server.RemoveDemoAsync();
        await store.SetAsync("demo-on-server", null);
    }

    private async Task CountAsync(string operation)
    {
        var writes = _writes;
        var (pending, refused) = (await store.CountPendingAsync(operation), await store.CountRefusedAsync(operation));
        // What was written meanwhile is counted by its own writing; this count may not know of it.
        if (writes == _writes)
            (Pending, Refused) = (pending, refused);
    }
}
