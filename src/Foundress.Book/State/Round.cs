using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.State;

/// <summary>A sampling round as the book has it today.</summary>
/// <param name="Entry">The entry that planned it.</param>
/// <param name="Plan">What was planned and drawn.</param>
/// <param name="Skips">Colonies passed over so far, by colony.</param>
/// <param name="Stops">Apiaries in which the round was ended early.</param>
/// <param name="Jars">Jars recorded for the round so far, in the book's order.</param>
public sealed record Round(
    Entry Entry,
    RoundRecord Plan,
    IReadOnlyDictionary<ColonyId, RoundSkip> Skips,
    IReadOnlyDictionary<ApiaryId, RoundStop> Stops,
    IReadOnlyList<Jar> Jars)
{
    /// <summary>Its id.</summary>
    public RoundId Id => Plan.Round;

    private HashSet<ColonyId> Done { get; } = [.. Jars.Where(jar => jar.Colony is not null).Select(jar => jar.Colony!.Value)];

    /// <summary>
    /// The colonies to sample in one apiary as things stand: those drawn, less those skipped, plus as many reserves as were
    /// skipped, in order. Fewer when the reserves have run out; only those with a jar once the round was ended there.
    /// </summary>
    /// <param name="draw">One of the plan's draws.</param>
    public IReadOnlyList<ColonyId> ToSample(ApiaryDraw draw)
    {
        if (Stops.ContainsKey(draw.Apiary))
            return [.. draw.Chosen.Concat(draw.Reserves).Where(Done.Contains)];
        var wanted = draw.Chosen.Count;
        var list = new List<ColonyId>(wanted);
        foreach (var colony in draw.Chosen.Concat(draw.Reserves))
        {
            if (list.Count == wanted)
                break;
            if (!Skips.ContainsKey(colony))
                list.Add(colony);
        }

        return list;
    }

    /// <summary>Colonies still without a jar, in the order to visit them.</summary>
    public IReadOnlyList<ColonyId> Open => [.. Plan.Draws.SelectMany(ToSample).Where(colony => !Done.Contains(colony))];
}
