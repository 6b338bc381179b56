using System.Globalization;
using Foundress.Book.Jobs;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Book.Wording;

namespace Foundress.Book.Forecasts.Exchange;

/// <summary>
/// Names what goes into a forecast, so that one that was kept is known to be still good: the entries that bear on the
/// apiary, the build of the model and its knowledge, the day, the seed and the rest of the request, the culture and the language.
/// </summary>
/// <remarks>Two forecasts of the same key are the same. Another key may still mean the same forecast: what is not known to be without bearing counts.</remarks>
public sealed class ForecastKeys
{
    private readonly BookState _state;
    private readonly UInt128 _ofBook;

    /// <summary>The keys of a book.</summary>
    /// <param name="state">What the book says.</param>
    /// <param name="entries">Its entries, in any order.</param>
    public ForecastKeys(BookState state, IEnumerable<Entry> entries)
    {
        _state = state;
        foreach (var entry in entries)
        {
            if (!IsOfColony(entry.Kind))
                _ofBook += Trace(entry);
        }
    }

    /// <summary>The key of a request.</summary>
    /// <param name="request">The request.</param>
    /// <param name="culture">How its sentences are written.</param>
    public string Of(ForecastRequest request, CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(request);
        var sum = _ofBook;
        foreach (var colony in ColoniesOf(request))
        {
            // A colony counts by itself too: two that stand without an entry of their own must not look like none.
            sum += Mixed(colony.Value, 1);
            foreach (var entry in _state.EntriesOf(colony))
                sum += Trace(entry);
        }

        return string.Create(CultureInfo.InvariantCulture, $"{sum:x32} {ProgramBuild.Name} {culture.Name} {Languages.Current.Code} {ForecastJson.Write(request)}");
    }

    // Those that stand there, and those that were ever united into them.
    private HashSet<ColonyId> ColoniesOf(ForecastRequest request)
    {
        HashSet<ColonyId> found = [];
        var open = new Stack<ColonyId>(_state.ColoniesIn(request.Apiary, request.Today).Select(colony => colony.Id));
        while (open.TryPop(out var colony))
        {
            if (!found.Add(colony))
                continue;
            foreach (var happening in _state.HappeningsOf(colony))
            {
                if (happening.Facts is ColoniesUnited united)
                    open.Push(united.Colony);
            }
        }

        return found;
    }

    // Entries never change, so that an entry's id stands for what it says; whether it is struck out is in other entries.
    private UInt128 Trace(Entry entry) => Mixed(entry.Id.Value, _state.Struck.ContainsKey(entry.Id) ? 2UL : 3UL);

    private static UInt128 Mixed(Guid id, ulong tag)
    {
        Span<byte> bytes = stackalloc byte[16];
        id.TryWriteBytes(bytes);
        var low = BitConverter.ToUInt64(bytes) + (tag * 0x9E3779B97F4A7C15UL);
        var high = BitConverter.ToUInt64(bytes[8..]);
        low = Mixed(low ^ Mixed(high));
        return new UInt128(Mixed(high + low), low);
    }

    // The finalizer of SplitMix64 (Steele, Lea & Flood 2014).
    private static ulong Mixed(ulong x)
    {
        x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9UL;
        x = (x ^ (x >> 27)) * 0x94D049BB133111EBUL;
        return x ^ (x >> 31);
    }

    // What is read by colony, and rounds and plans, which no forecast reads. Every other kind counts for all apiaries.
    private static bool IsOfColony(string kind) => kind
        is RecordKinds.Colony or RecordKinds.ColonyMoved or RecordKinds.ColonyDied or RecordKinds.ColonySplit or RecordKinds.ColoniesUnited
        or RecordKinds.Inspection or RecordKinds.Queen or RecordKinds.ColonyBegan or RecordKinds.BroodRemoved or RecordKinds.Jar or RecordKinds.JarPlaced
        or RecordKinds.Control or RecordKinds.MiteFall or RecordKinds.OpenedBrood or RecordKinds.Strike
        or RecordKinds.ControlPlan or RecordKinds.Round or RecordKinds.RoundSkip or RecordKinds.RoundStop;
}
