using Foundress.Book.Journal;
using Foundress.Book.Wording;
using Foundress.Web.Store;

namespace Foundress.Web.Shell;

/// <summary>The last thing that was kept, which one tap takes back: undo instead of asking beforehand.</summary>
/// <param name="session">The open book.</param>
public sealed class UndoList(BookSession session)
{
    private IReadOnlyList<Entry> _entries = [];
    private string? _said;
    private int _moves;

    /// <summary>Told when there is something else to take back, or nothing.</summary>
    public event Action? Changed;

    /// <summary>Told after something was taken back.</summary>
    public event Action? TakenBack;

    /// <summary>What was kept, or what failed, in words; null when there is nothing to say, or another book is open.</summary>
    public string? Said => _entries.Count > 0 && _entries[0].Operation != session.Operation ? null : _said;

    /// <summary>Offers to take entries back.</summary>
    /// <param name="said">What was kept, for example <c>Inspection of 12 kept</c>.</param>
    /// <param name="entries">The entries.</param>
    public void Offer(string said, params IReadOnlyList<Entry> entries)
    {
        (_said, _entries, _moves) = (said, entries, 0);
        Changed?.Invoke();
    }

    /// <summary>Strikes the entries out.</summary>
    /// <exception cref="StoreException">The device could not keep the strikes.</exception>
    public async Task UndoAsync()
    {
        // Taken off first: a second tap must not strike twice, and what is kept meanwhile is offered in its place.
        var (said, entries) = (Said, _entries);
        Dismiss();
        if (said is null || entries.Count == 0)
            return;
        try
        {
            await session.WriteAsync([.. entries.Select(entry => new Book.Records.Strike(entry.Id, OfferedWords.TakenBack))]);
        }
        catch (StoreException)
        {
            if (Said is null)
                Offer(said, entries);
            throw;
        }

        TakenBack?.Invoke();
    }

    /// <summary>
    /// Another page was opened. The first is the one that follows on keeping; with the second the reader has gone on, and
    /// the offer goes too: the history of the colony still takes anything back.
    /// </summary>
    public void Moved()
    {
        if (Said is not null && ++_moves > 1)
            Dismiss();
    }

    /// <summary>Offers nothing any more.</summary>
    public void Dismiss()
    {
        (_said, _entries) = (null, []);
        Changed?.Invoke();
    }
}
