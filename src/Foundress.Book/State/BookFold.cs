using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.State;

/// <summary>
/// Reads entries in the book's order and gathers what they say. Later entries win field by field; struck entries are
/// passed over; an entry that cannot be taken into account is listed with its reason, never dropped.
/// </summary>
internal sealed class BookFold
{
    private readonly Dictionary<ColonyId, ColonyDraft> _drafts = [];
    private readonly Dictionary<EntryId, ColonyId> _placed = [];
    private readonly Dictionary<EntryId, Entry> _jarEntries = [];
    private readonly Dictionary<RoundId, (Entry Entry, RoundRecord Plan)> _rounds = [];
    private readonly Dictionary<RoundId, Dictionary<ColonyId, RoundSkip>> _skips = [];
    private readonly Dictionary<RoundId, Dictionary<ApiaryId, RoundStop>> _stops = [];
    private readonly List<(Entry Entry, JarRecord Facts)> _jars = [];

    private BookFold()
    {
    }

    internal IReadOnlySet<ApiaryId>? Only { get; private init; }

    internal Dictionary<ApiaryId, Apiary> Apiaries { get; } = [];

    internal Dictionary<ColonyId, Colony> Colonies { get; } = [];

    internal List<Jar> Jars { get; } = [];

    internal Dictionary<ColonyId, List<Jar>> JarsByColony { get; } = [];

    internal Dictionary<ApiaryId, List<(Jar Jar, Colony Colony)>> JarsByApiary { get; } = [];

    internal Dictionary<ColonyId, List<Inspection>> InspectionsByColony { get; } = [];

    internal Dictionary<ColonyId, List<MiteFall>> FallsByColony { get; } = [];

    internal Dictionary<ColonyId, List<BroodOpening>> BroodByColony { get; } = [];

    internal Dictionary<ColonyId, List<Happening>> HappeningsByColony { get; } = [];

    internal Dictionary<ColonyId, List<Entry>> EntriesByColony { get; } = [];

    internal Dictionary<ApiaryId, List<Entry>> EntriesByApiary { get; } = [];

    internal Dictionary<RoundId, Round> Rounds { get; } = [];

    internal ControlFold Controls { get; } = new();

    internal PolicyRecord Policy { get; private set; } = new();

    internal Dictionary<EntryId, StruckEntry> Struck { get; } = [];

    internal List<Unreadable> Unreadable { get; } = [];

    /// <summary>Folds entries that are already in the book's order.</summary>
    internal static BookState Fold(IReadOnlyList<ReadEntry> ordered, IReadOnlySet<ApiaryId>? only = null)
    {
        var fold = new BookFold { Only = only };
        fold.FindStrikes(ordered);
        foreach (var read in ordered)
            fold.Take(read);
        fold.Finish();
        return new BookState(fold);
    }

    // Latest first: a strike counts unless a later strike that counts has struck it.
    private void FindStrikes(IReadOnlyList<ReadEntry> ordered)
    {
        for (var i = ordered.Count - 1; i >= 0; i--)
        {
            if (ordered[i] is { Record: Strike strike, Entry: var entry } && !Struck.ContainsKey(entry.Id))
                Struck[strike.Entry] = new StruckEntry(entry, strike.Reason);
        }
    }

    private void Take(ReadEntry read)
    {
        foreach (var colony in ColoniesOf(read.Record))
            Listed(EntriesByColony, colony).Add(read.Entry);
        if (ApiaryOf(read.Record) is { } apiary)
            Listed(EntriesByApiary, apiary).Add(read.Entry);
        if (read.IsUnreadable)
        {
            Unreadable.Add(new Unreadable(read.Entry));
            foreach (var colony in UnreadPlaces.ColoniesOf(read.Entry.Payload))
                Listed(EntriesByColony, colony).Add(read.Entry);
        }

        Controls.See(read);
        if (read.Record is JarRecord)
            _jarEntries[read.Entry.Id] = read.Entry;
        if (read.Record is null || Struck.ContainsKey(read.Entry.Id))
            return;
        switch (read.Record)
        {
            case ApiaryRecord record:
                TakeApiary(record);
                break;
            case ColonyRecord record:
                Draft(record.Colony).Merge(record);
                break;
            case ColonyMoved record:
                Draft(record.Colony).Stays.Add(new Stay(record.To, record.On));
                break;
            case ColonyDied record:
                Draft(record.Colony).End = new ColonyEnd(record.On, ColonyFate.Died, record.Cause);
                break;
            case ColoniesUnited record:
                Draft(record.Colony).End = new ColonyEnd(record.On, ColonyFate.United, Into: record.Into);
                Happened(read.Entry, record.On, record, record.Into);
                Happened(read.Entry, record.On, record, record.Colony);
                break;
            case ColonySplit record:
                Draft(record.Colony).Split = record;
                Happened(read.Entry, record.On, record, record.Parent);
                Happened(read.Entry, record.On, record, record.Colony);
                break;
            case QueenRecord record:
                Happened(read.Entry, record.On, record, record.Colony);
                break;
            case ColonyBegan record:
                Happened(read.Entry, record.On, record, record.Colony);
                break;
            case BroodRemoved record:
                Happened(read.Entry, record.On, record, record.Colony);
                break;
            case InspectionRecord record:
                Listed(InspectionsByColony, record.Colony).Add(new Inspection(read.Entry, record));
                break;
            case MiteFallRecord record:
                Listed(FallsByColony, record.Colony).Add(new MiteFall(read.Entry, record));
                break;
            case OpenedBroodRecord record:
                Listed(BroodByColony, record.Colony).Add(new BroodOpening(read.Entry, record));
                break;
            case RoundRecord record:
                _rounds[record.Round] = (read.Entry, record);
                break;
            case RoundSkip record:
                if (!_skips.TryGetValue(record.Round, out var skips))
                    _skips[record.Round] = skips = [];
                skips[record.Colony] = record;
                break;
            case RoundStop record:
                if (!_stops.TryGetValue(record.Round, out var stops))
                    _stops[record.Round] = stops = [];
                stops[record.Apiary] = record;
                break;
            case JarRecord record:
                _jars.Add((read.Entry, record));
                break;
            case JarPlaced record:
                _placed[record.Jar] = record.Colony;
                break;
            case ControlRecord or ControlEnded or AgentRecord or NormalsRecord or ApiaryDays or DueSnoozed:
                Controls.Take(read.Entry, read.Record);
                break;
            case ControlPlanRecord plan:
                Controls.Take(read.Entry, plan);
                break;
            case PolicyRecord record:
                TakePolicy(record);
                break;
        }
    }

    private void TakeApiary(ApiaryRecord record)
    {
        var known = Apiaries.GetValueOrDefault(record.Apiary) ?? new Apiary(record.Apiary, "?");
        Apiaries[record.Apiary] = known with
        {
            Name = record.Name ?? known.Name,
            Latitude = record.Latitude ?? known.Latitude,
            Longitude = record.Longitude ?? known.Longitude,
            Climate = record.Climate ?? known.Climate,
            LinePolicy = record.LinePolicy ?? known.LinePolicy,
            Note = record.Note ?? known.Note,
            Altitude = record.Altitude ?? known.Altitude,
            BroodFrom = record.BroodFrom ?? known.BroodFrom,
            BroodTo = record.BroodTo ?? known.BroodTo,
        };
    }

    private void TakePolicy(PolicyRecord record) => Policy = new PolicyRecord(
        record.OperationName ?? Policy.OperationName,
        record.LinePolicy ?? Policy.LinePolicy,
        record.OwnWatch ?? Policy.OwnWatch,
        record.OwnAct ?? Policy.OwnAct,
        record.SureBelow ?? Policy.SureBelow,
        record.SureAbove ?? Policy.SureAbove,
        record.Confidence ?? Policy.Confidence,
        record.Units ?? Policy.Units,
        record.JarMeasure ?? Policy.JarMeasure,
        record.ScoopBees ?? Policy.ScoopBees,
        record.ScoopLogSpread ?? Policy.ScoopLogSpread,
        record.Jurisdiction ?? Policy.Jurisdiction,
        record.CertifiedOrganic ?? Policy.CertifiedOrganic,
        record.Gear ?? Policy.Gear,
        record.CountedJarsTeach ?? Policy.CountedJarsTeach,
        record.FallLines ?? Policy.FallLines,
        record.DroneLines ?? Policy.DroneLines,
        record.WorkerLines ?? Policy.WorkerLines,
        record.Tolerance ?? Policy.Tolerance);

    private void Finish()
    {
        // A split colony starts where its parent stood, which is known only once every move has been read.
        foreach (var draft in _drafts.Values.OrderBy(draft => draft.Split?.On ?? DateOnly.MinValue))
        {
            if (draft.Split is { } split && _drafts.TryGetValue(split.Parent, out var parent) && parent.ApiaryOn(split.On) is { } apiary)
                draft.StartIn(new Stay(apiary, split.On));
        }

        foreach (var (id, draft) in _drafts)
        {
            if (draft.ToColony(id) is { } colony)
                Colonies[id] = colony;
        }

        foreach (var (entry, facts) in _jars)
            Jars.Add(new Jar(entry, facts, _placed.TryGetValue(entry.Id, out var placed) ? placed : facts.Colony));

        // A loose jar and its strike belong to the history of the colony it was later placed in.
        foreach (var (jar, colony) in _placed)
        {
            if (_jarEntries.TryGetValue(jar, out var entry))
                AddToHistory(colony, entry);
        }

        Controls.Finish(Colonies);
        foreach (var (entry, ended) in Controls.SaidEnds)
        {
            foreach (var colony in Controls.ColoniesOf(ended))
                AddToHistory(colony, entry);
        }

        // Stable: jars of one day stay in the book's order.
        var byDay = Jars.OrderBy(jar => jar.Facts.On).ToArray();
        Jars.Clear();
        Jars.AddRange(byDay);
        foreach (var jar in Jars)
        {
            if (jar.Colony is { } colony)
                Listed(JarsByColony, colony).Add(jar);
            // A jar stays with the apiary of its day when the colony moves on.
            if (jar.Colony is { } id && Colonies.TryGetValue(id, out var known))
                Listed(JarsByApiary, known.ApiaryOn(jar.Facts.On)).Add((jar, known));
        }

        foreach (var (colony, inspections) in InspectionsByColony.ToArray())
            InspectionsByColony[colony] = [.. inspections.OrderBy(inspection => inspection.Facts.On)];

        foreach (var (colony, falls) in FallsByColony.ToArray())
            FallsByColony[colony] = [.. falls.OrderBy(fall => fall.Facts.On)];
        foreach (var (colony, openings) in BroodByColony.ToArray())
            BroodByColony[colony] = [.. openings.OrderBy(opening => opening.Facts.On)];
        foreach (var (colony, happenings) in HappeningsByColony.ToArray())
            HappeningsByColony[colony] = [.. happenings.OrderBy(happening => happening.On)];

        var jarsByRound = Jars.Where(jar => jar.Facts.Round is not null).ToLookup(jar => jar.Facts.Round!.Value);
        foreach (var (id, (entry, whole)) in _rounds)
        {
            // Jars taken elsewhere may not be held here: a colony there must not stand open for ever.
            var plan = Only is null ? whole : whole with { Draws = [.. whole.Draws.Where(draw => Only.Contains(draw.Apiary))] };
            if (plan.Draws.Count == 0 && whole.Draws.Count > 0)
                continue;
            Rounds[id] = new Round(entry, plan, _skips.GetValueOrDefault(id) ?? [], _stops.GetValueOrDefault(id) ?? [], [.. jarsByRound[id]]);
        }
    }

    private void AddToHistory(ColonyId colony, Entry entry)
    {
        var entries = Listed(EntriesByColony, colony);
        if (entries.Contains(entry))
            return;
        entries.Add(entry);
        entries.Sort();
    }

    private void Happened(Entry entry, DateOnly on, Record facts, ColonyId colony) =>
        Listed(HappeningsByColony, colony).Add(new Happening(entry, on, facts));

    private ColonyDraft Draft(ColonyId colony)
    {
        if (!_drafts.TryGetValue(colony, out var draft))
            _drafts[colony] = draft = new ColonyDraft();
        return draft;
    }

    internal static List<T> Listed<TKey, T>(Dictionary<TKey, List<T>> lists, TKey key)
        where TKey : struct
    {
        if (!lists.TryGetValue(key, out var list))
            lists[key] = list = [];
        return list;
    }

    private static ApiaryId? ApiaryOf(Record? record) => record switch
    {
        ApiaryRecord r => r.Apiary,
        NormalsRecord r => r.Apiary,
        ApiaryDays r => r.Apiary,
        _ => null,
    };

    private static ReadOnlySpan<ColonyId> ColoniesOf(Record? record) => record switch
    {
        ColonyRecord r => new[] { r.Colony },
        ColonyMoved r => new[] { r.Colony },
        ColonyDied r => new[] { r.Colony },
        ColonySplit r => new[] { r.Parent, r.Colony },
        ColoniesUnited r => new[] { r.Colony, r.Into },
        InspectionRecord r => new[] { r.Colony },
        MiteFallRecord r => new[] { r.Colony },
        OpenedBroodRecord r => new[] { r.Colony },
        QueenRecord r => new[] { r.Colony },
        ColonyBegan r => new[] { r.Colony },
        BroodRemoved r => new[] { r.Colony },
        RoundSkip r => new[] { r.Colony },
        JarRecord { Colony: { } colony } => new[] { colony },
        JarPlaced r => new[] { r.Colony },
        ControlRecord r => r.Colonies.Distinct().ToArray(),
        ControlPlanRecord r => r.Colonies.Distinct().ToArray(),
        _ => [],
    };

    /// <summary>A colony while its entries are being read.</summary>
    private sealed class ColonyDraft
    {
        private string? _name;
        private string? _note;
        private Stay? _registered;

        internal List<Stay> Stays { get; } = [];

        internal ColonyEnd? End { get; set; }

        internal ColonySplit? Split { get; set; }

        internal void Merge(ColonyRecord record)
        {
            _name = record.Name ?? _name;
            _note = record.Note ?? _note;
            if (record.Apiary is { } apiary)
                _registered = new Stay(apiary, record.On ?? _registered?.Since);
        }

        internal void StartIn(Stay first) => _registered ??= first;

        internal ApiaryId? ApiaryOn(DateOnly day) => Ordered() is { Count: > 0 } stays
            ? new Colony(default, string.Empty, stays).ApiaryOn(day)
            : null;

        internal Colony? ToColony(ColonyId id)
        {
            var stays = Ordered();
            return stays.Count == 0 ? null : new Colony(id, _name ?? Split?.Name ?? "?", stays, End, Split?.Parent, _note);
        }

        private List<Stay> Ordered() =>
            [.. (_registered is { } first ? Stays.Prepend(first) : Stays).OrderBy(stay => stay.Since ?? DateOnly.MinValue)];
    }
}
