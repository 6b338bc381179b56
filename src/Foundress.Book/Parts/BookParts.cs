using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.Parts;

/// <summary>
/// Which entries of a large book are needed to say how one apiary stands, so that a server need not read the whole of it for
/// every answer, and a phone need not keep it.
/// </summary>
/// <remarks>
/// An apiary's part holds the settings, all apiaries, everything of each colony that ever stood there and of those it was
/// split from, united with or controlled together with, the controls of these colonies, the rounds drawn there, and every strike of any of these. What
/// is worked out from a part for its apiary is the same as from the whole book. Parts only grow. Not safe for concurrent use.
/// </remarks>
public sealed class BookParts
{
    private readonly Part _shared = new();
    private readonly Dictionary<ApiaryId, ApiaryPart> _apiaries = [];
    private readonly Dictionary<ColonyId, ColonyPart> _colonies = [];
    private readonly Dictionary<ControlId, ControlPart> _controls = [];
    private readonly Dictionary<RoundId, Part> _rounds = [];
    private readonly Dictionary<EntryId, Part> _partOf = [];
    private readonly Dictionary<EntryId, List<(EntryId Strike, long Handle)>> _waiting = [];

    /// <summary>The number of entries seen.</summary>
    public int Count => _partOf.Count;

    /// <summary>The apiaries of which anything is known.</summary>
    public IReadOnlyCollection<ApiaryId> Apiaries => _apiaries.Keys;

    /// <summary>Takes an entry in; one that was seen before is passed over.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="handle">What it is to be found by: its place in the store, for instance.</param>
    /// <returns>False for one that was seen before; it may have another place by now.</returns>
    public bool Add(Entry entry, long handle)
    {
        if (_partOf.ContainsKey(entry.Id))
            return false;
        var record = ReadRecord(entry);
        if (record is Strike { Entry: var struck } && struck != entry.Id && !_partOf.ContainsKey(struck))
        {
            // What it strikes has not come yet: it goes where that goes. Until then every part holds it.
            Listed(_waiting, struck).Add((entry.Id, handle));
            Put(entry.Id, _shared, handle);
            return true;
        }

        var part = record is Strike strike ? _partOf.GetValueOrDefault(strike.Entry, _shared) : PartOf(record);
        Put(entry.Id, part, handle);
        Release(entry.Id, part);
        return true;
    }

    /// <summary>How far an apiary's part has grown: a greater number means that entries came.</summary>
    /// <param name="apiary">The apiary.</param>
    public long VersionOf(ApiaryId apiary) => PartsOf(apiary).Sum(part => 1L + part.Entries.Count);

    /// <summary>The handles of an apiary's part, each once, in order.</summary>
    /// <param name="apiary">The apiary; one that is not known has only what all share.</param>
    public IReadOnlyList<long> Of(ApiaryId apiary)
    {
        var handles = PartsOf(apiary).SelectMany(part => part.Entries).Distinct().ToArray();
        Array.Sort(handles);
        return handles;
    }

    /// <summary>
    /// Names what a part is of: its colonies, and rounds and controls that were told of late. When another name is given later, older entries may have come into the part: whoever
    /// reads on from a place in it begins again.
    /// </summary>
    /// <param name="apiary">The apiary.</param>
    public string MembersOf(ApiaryId apiary)
    {
        var parts = PartsOf(apiary).ToArray();
        byte[] members =
        [
            .. parts.OfType<ColonyPart>().Select(colony => colony.Id.Value).Order().SelectMany(id => id.ToByteArray()),
            .. parts.Where(part => part is { IsLate: true } and not ColonyPart).Select(part => part.Entries[0]).Order().SelectMany(BitConverter.GetBytes),
        ];
        return Convert.ToHexStringLower(SHA256.HashData(members).AsSpan(0, 8));
    }

    private static Record? ReadRecord(Entry entry) =>
        entry.Schema > RecordKinds.CurrentSchema ? null : RecordJson.TryRead(entry.Kind, entry.Payload, out _);

    private void Put(EntryId entry, Part part, long handle)
    {
        part.Entries.Add(handle);
        _partOf[entry] = part;
    }

    // Strikes that waited for an entry, and those that waited for these.
    private void Release(EntryId entry, Part part)
    {
        if (!_waiting.Remove(entry, out var strikes))
            return;
        foreach (var (strike, handle) in strikes)
        {
            if (part != _shared)
                Put(strike, part, handle);
            Release(strike, part);
        }
    }

    private Part PartOf(Record? record)
    {
        switch (record)
        {
            case NormalsRecord normals:
                return Apiary(normals.Apiary);
            case ApiaryDays days:
                return Apiary(days.Apiary);
            case ControlPlanRecord plan:
                return Apiary(plan.Apiary);
            case ApiaryRecord apiary:
                Apiary(apiary.Apiary);
                return _shared;
            case RoundRecord round:
                foreach (var draw in round.Draws)
                    Join(Apiary(draw.Apiary).Rounds, Round(round.Round));
                return Round(round.Round);
            case RoundSkip skip:
                return Round(skip.Round);
            case RoundStop stop:
                return Round(stop.Round);
            case ControlRecord control:
                foreach (var colony in control.Colonies)
                {
                    Join(Colony(colony).Controls, Control(control.Control));
                    Control(control.Control).Colonies.Add(Colony(colony));
                }

                return Control(control.Control);
            case ControlEnded ended:
                return Control(ended.Control);
            default:
                return OfColony(record);
        }
    }

    private Part OfColony(Record? record)
    {
        switch (record)
        {
            case ColonyRecord colony:
                if (colony.Apiary is { } stands)
                    Stand(colony.Colony, stands);
                return Colony(colony.Colony);
            case ColonyMoved moved:
                Stand(moved.Colony, moved.To);
                return Colony(moved.Colony);
            case ColonySplit split:
                Relate(split.Parent, split.Colony);
                return Colony(split.Colony);
            case ColoniesUnited united:
                Relate(united.Colony, united.Into);
                return Colony(united.Colony);
            case ColonyDied died:
                return Colony(died.Colony);
            case InspectionRecord inspection:
                return Colony(inspection.Colony);
            case QueenRecord queen:
                return Colony(queen.Colony);
            case ColonyBegan began:
                return Colony(began.Colony);
            case BroodRemoved removed:
                return Colony(removed.Colony);
            case MiteFallRecord fall:
                return Colony(fall.Colony);
            case OpenedBroodRecord opened:
                return Colony(opened.Colony);
            case JarRecord { Colony: { } colony }:
                return Colony(colony);
            case JarPlaced placed:
                return Colony(placed.Colony);
            default:
                // Settings, own controls, what was put off, loose jars, and what this version cannot read.
                return _shared;
        }
    }

    // What joins with entries in it brings older places with it.
    private static void Join<T>(HashSet<T> parts, T part)
        where T : Part
    {
        if (parts.Add(part))
            part.IsLate |= part.Entries.Count > 0;
    }

    private void Stand(ColonyId colony, ApiaryId apiary) => Apiary(apiary).Colonies.Add(Colony(colony));

    private void Relate(ColonyId one, ColonyId other)
    {
        Colony(one).Kin.Add(Colony(other));
        Colony(other).Kin.Add(Colony(one));
    }

    private IEnumerable<Part> PartsOf(ApiaryId apiary)
    {
        yield return _shared;
        if (!_apiaries.TryGetValue(apiary, out var own))
            yield break;
        yield return own;
        foreach (var round in own.Rounds)
            yield return round;
        var colonies = new HashSet<ColonyPart>(own.Colonies);
        var left = new Queue<ColonyPart>(colonies);
        var controls = new HashSet<ControlPart>();
        while (left.TryDequeue(out var colony))
        {
            yield return colony;
            foreach (var control in colony.Controls.Where(controls.Add))
            {
                yield return control;
                foreach (var treated in control.Colonies.Where(colonies.Add))
                    left.Enqueue(treated);
            }

            foreach (var kin in colony.Kin.Where(colonies.Add))
                left.Enqueue(kin);
        }
    }

    private ApiaryPart Apiary(ApiaryId id) => Made(_apiaries, id);

    private ColonyPart Colony(ColonyId id)
    {
        var part = Made(_colonies, id);
        part.Id = id;
        return part;
    }

    private ControlPart Control(ControlId id) => Made(_controls, id);

    private Part Round(RoundId id) => Made(_rounds, id);

    private static T Made<TKey, T>(Dictionary<TKey, T> all, TKey key)
        where TKey : notnull
        where T : class, new() =>
        CollectionsMarshal.GetValueRefOrAddDefault(all, key, out _) ??= new T();

    private static List<T> Listed<TKey, T>(Dictionary<TKey, List<T>> lists, TKey key)
        where TKey : notnull => CollectionsMarshal.GetValueRefOrAddDefault(lists, key, out _) ??= [];

    private class Part
    {
        internal List<long> Entries { get; } = [];

        /// <summary>Whether it came to some apiary after it had entries already.</summary>
        internal bool IsLate { get; set; }
    }

    private sealed class ColonyPart : Part
    {
        internal ColonyId Id { get; set; }

        internal HashSet<ColonyPart> Kin { get; } = [];

        internal HashSet<ControlPart> Controls { get; } = [];
    }

    private sealed class ControlPart : Part
    {
        internal HashSet<ColonyPart> Colonies { get; } = [];
    }

    private sealed class ApiaryPart : Part
    {
        internal HashSet<ColonyPart> Colonies { get; } = [];

        internal HashSet<Part> Rounds { get; } = [];
    }
}
