using System.Globalization;
using Foundress.Book;
using Foundress.Book.Dues;
using Foundress.Book.Journal;
using Foundress.Book.Parts;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Storage;

namespace Foundress.Server.Books;

/// <summary>One operation's book, read an apiary at a time. Safe for concurrent use.</summary>
/// <param name="store">The book.</param>
/// <param name="operation">The operation.</param>
internal sealed class OperationParts(BookStore store, string operation) : IDisposable
{
    // Whole states of apiaries that are kept for the next question; summaries are small and all kept.
    private const int StatesKept = 64;

    private readonly SemaphoreSlim _gate = new(1, 1);
    private readonly Dictionary<ApiaryId, ((long, long) Version, BookState State, long Used)> _states = [];
    // What is said is said in a reader's language.
    private readonly Dictionary<(ApiaryId Apiary, Language Language), ((long, long) Version, DateOnly Day, ApiarySummary Summary)> _summaries = [];
    private BookParts _parts = new();
    private Guid _incarnation;
    private long _cursor;
    private long _uses;
    private long _readings;

    /// <summary>The place in the store up to which the operation has been read; 0 before the first question. For tests.</summary>
    internal long ReadUpTo => _cursor;

    /// <summary>What one apiary's part of the book says.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>Null when no such apiary is in the book.</returns>
    internal async Task<BookState?> StateAsync(ApiaryId apiary, CancellationToken cancellation)
    {
        var (version, handles, known) = await GateAsync(
            () => Kept(apiary) is { } kept ? ((0, 0), [], kept) : (VersionOf(apiary), _parts.Of(apiary), (BookState?)null), cancellation);
        if (known is null)
        {
            var ledger = new Ledger();
            ledger.Add(await ReadAsync(apiary, handles, cancellation));
            known = ledger.State;
            await GateAsync(() => Keep(apiary, version, known), cancellation);
        }

        return known.Apiaries.ContainsKey(apiary) ? known : null;
    }

    /// <summary>What is said of an apiary on a day.</summary>
    /// <returns>Null when no such apiary is in the book.</returns>
    internal async Task<ApiarySummary?> SummaryAsync(ApiaryId apiary, DateOnly today, CancellationToken cancellation)
    {
        var (version, known) = await GateAsync(() => (VersionOf(apiary), Summary(apiary, today)), cancellation);
        if (known is not null)
            return known;
        if (await StateAsync(apiary, cancellation) is not { } state)
            return null;
        var made = Sum(state, state.Apiaries[apiary], today);
        await GateAsync(() => _summaries[(apiary, Languages.Current)] = (version, today, made), cancellation);
        return made;
    }

    /// <summary>What is said of every apiary on a day, those that need their keeper first.</summary>
    internal async Task<IReadOnlyList<ApiarySummary>> SummariesAsync(DateOnly today, CancellationToken cancellation)
    {
        // Read on once for all of them; only those that something came to are worked out anew.
        var known = await GateAsync(() => _parts.Apiaries.Select(apiary => (Apiary: apiary, Summary: Summary(apiary, today))).ToArray(), cancellation);
        var summaries = Array.ConvertAll(known, one => one.Summary);
        var stale = Enumerable.Range(0, known.Length).Where(n => summaries[n] is null);
        await Parallel.ForEachAsync(stale, cancellation, async (n, stop) => summaries[n] = await SummaryAsync(known[n].Apiary, today, stop));
        return
        [
            .. summaries.OfType<ApiarySummary>()
                .OrderBy(summary => summary.Season.Urgency).ThenBy(summary => summary.Season.Apiary.Name, NaturalOrder.Instance),
        ];
    }

    /// <summary>Where the entries of an apiary's part lie, and a name for what the part is of.</summary>
    /// <returns>Null when nothing is known of such an apiary.</returns>
    internal Task<(IReadOnlyList<long> Sequences, string Members)?> PartAsync(ApiaryId apiary, CancellationToken cancellation) =>
        GateAsync<(IReadOnlyList<long>, string)?>(() => _parts.Apiaries.Contains(apiary) ? (_parts.Of(apiary), _parts.MembersOf(apiary)) : null, cancellation);

    /// <summary>Reads what is in the book by now.</summary>
    internal Task ReadAsync(CancellationToken cancellation) => GateAsync(() => true, cancellation);

    /// <summary>Lets go of what it holds.</summary>
    public void Dispose() => _gate.Dispose();

    private static ApiarySummary Sum(BookState state, Apiary apiary, DateOnly today)
    {
        var knowledge = KnowledgeBase.Load();
        var strips = new SeasonStrips(state, knowledge, CultureInfo.CurrentCulture);
        var season = new SeasonOverview(state, knowledge, strips).Of(apiary, today);
        // The part knows the names of other apiaries and not their colonies: only what is due here is told.
        var dues = new DueItems(state, knowledge, strips).On(today, [season]).Where(item => item.Apiary == apiary.Id).ToArray();
        var named = dues.SelectMany(item => item.Colonies).Distinct().Where(state.Colonies.ContainsKey).ToDictionary(id => id, id => state.Colonies[id]);
        return new ApiarySummary(season, dues, state.ColoniesIn(apiary.Id, today).Count, named);
    }

    private async Task<IReadOnlyList<Entry>> ReadAsync(ApiaryId apiary, IReadOnlyList<long> handles, CancellationToken cancellation)
    {
        var entries = await store.ReadAtAsync(operation, handles, cancellation);
        if (entries.Count == handles.Count)
            return entries;
        // An entry took another place, or the invented book was removed: what is known of the places is old.
        await GateAsync(BeginAnew, cancellation);
        return await store.ReadAtAsync(operation, await GateAsync(() => _parts.Of(apiary), cancellation), cancellation);
    }

    private async Task<T> GateAsync<T>(Func<T> look, CancellationToken cancellation)
    {
        await _gate.WaitAsync(cancellation);
        try
        {
            await ReadOnAsync(cancellation);
            return look();
        }
        finally
        {
            _gate.Release();
        }
    }

    private async Task ReadOnAsync(CancellationToken cancellation)
    {
        EntryPage page;
        do
        {
            page = await store.ReadAsync(operation, _cursor, BookStore.GreatestPage, cancellation);
            if (store.Incarnation != _incarnation)
            {
                var first = _cursor == 0;
                BeginAnew();
                _incarnation = store.Incarnation;
                if (!first)
                {
                    page = page with { More = true };
                    continue;
                }
            }

            var isOrdered = true;
            for (var n = 0; n < page.Entries.Count && isOrdered; n++)
                isOrdered = _parts.Add(page.Entries[n], page.Sequences[n]);
            if (isOrdered)
            {
                _cursor = page.Next;
                continue;
            }

            // One that was known has taken another place, and another entry stands for it: the parts are made anew.
            BeginAnew();
            page = page with { More = true };
        }
        while (page.More);
    }

    private BookParts BeginAnew()
    {
        _states.Clear();
        _summaries.Clear();
        _cursor = 0;
        _readings++;
        return _parts = new BookParts();
    }

    // A part that was made anew may come to the same count with another entry in it.
    private (long Reading, long Count) VersionOf(ApiaryId apiary) => (_readings, _parts.VersionOf(apiary));

    private BookState? Kept(ApiaryId apiary)
    {
        if (!_states.TryGetValue(apiary, out var kept) || kept.Version != VersionOf(apiary))
            return null;
        _states[apiary] = kept with { Used = ++_uses };
        return kept.State;
    }

    private BookState Keep(ApiaryId apiary, (long, long) version, BookState state)
    {
        _states[apiary] = (version, state, ++_uses);
        if (_states.Count > StatesKept)
            _states.Remove(_states.MinBy(kept => kept.Value.Used).Key);
        return state;
    }

    private ApiarySummary? Summary(ApiaryId apiary, DateOnly today) =>
        _summaries.TryGetValue((apiary, Languages.Current), out var kept) && kept.Version == VersionOf(apiary) && kept.Day == today ? kept.Summary : null;
}
