using Foundress.Accounts;
using Foundress.Book;
using Foundress.Book.Journal;
using Foundress.Server.Exchange;
using Foundress.Storage;

namespace Foundress.Server.Accounts;

/// <summary>
/// Holds what entries say of their author and device against who gives them. A helper gives their own; a keeper may pass on
/// those of others, and it is noted who did. Entries that the book holds already may always be given again.
/// </summary>
internal sealed class EntryGate(BookStore store, Devices devices, Members members, PassedOnLog passedOn)
{
    /// <summary>Sorts out the entries that the one who asks may not give.</summary>
    public async Task<ReadExchange> SiftAsync(HttpContext http, string operation, ReadExchange exchange)
    {
        if (exchange.Entries.Count == 0)
            return exchange;
        var caller = Caller.Known(http);
        var cancellation = http.RequestAborted;
        var own = await devices.NamesOfAsync(caller.Person, cancellation);
        var names = await members.NamesAsync(operation, cancellation);
        var held = await store.HeldAsync(operation, [.. exchange.Entries.Select(entry => entry.Id)], cancellation);
        var mayPassOn = caller.Standing.Has(operation, Role.Keeper);
        var (kept, refused, foreign) = (new List<Entry>(), new List<RefusedEntry>(exchange.Refused), new List<Guid>());
        foreach (var (entry, index) in exchange.Entries.Zip(Places(exchange)))
        {
            var known = held.GetValueOrDefault(entry.Id);
            // Whatever comes later in the book's order than what it holds under the same id changes nothing.
            var changesNothing = known is not null && !Ledger.ComesBefore(entry, known);
            var problem = changesNothing ? null : Problem(entry, known, caller, own, names);
            if (problem is null || mayPassOn)
                kept.Add(entry);
            else
                refused.Add(new RefusedEntry(index, entry.Id.ToString(), problem));
            if (problem is not null && mayPassOn)
                foreign.Add(entry.Id.Value);
        }

        // Before they are kept: a note too many tells no lie, one too few would.
        if (foreign.Count > 0)
            await passedOn.NoteAsync(operation, foreign, caller.Person, caller.Device ?? "", cancellation);
        return new ReadExchange(kept, [.. refused.OrderBy(one => one.Index)]);
    }

    private static string? Problem(Entry entry, Entry? known, Caller caller, IReadOnlySet<string> own, IReadOnlyDictionary<string, Guid> names)
    {
        if (known is not null && !own.Contains(known.Device))
            return AccountTexts.FormatIdTaken(known.Author);
        if (!own.Contains(entry.Device))
            return AccountTexts.FormatDeviceNotYours(entry.Device);
        return names.TryGetValue(PersonNames.Key(entry.Author), out var owner) && owner != caller.Person
            ? AccountTexts.FormatAuthorNotYou(entry.Author, caller.Standing.Name)
            : null;
    }

    // The places in the array that was sent, of the entries that could be read.
    private static IEnumerable<int> Places(ReadExchange exchange)
    {
        var gaps = exchange.Refused.Select(one => one.Index).ToHashSet();
        return Enumerable.Range(0, exchange.Entries.Count + gaps.Count).Where(index => !gaps.Contains(index));
    }
}
