using System.Collections.Concurrent;
using System.Globalization;
using System.Runtime.CompilerServices;
using Foundress.Book.Controls;
using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science.Verifying;

namespace Foundress.Book.Proving;

/// <summary>Which groups of controls showed a reduced effect in an apiary, with no later proof there that one of the group worked.</summary>
public static class ReducedEffects
{
    /// <summary>A proof older than this says nothing of the mites of today any more (product choice).</summary>
    public const int Years = 3;

    // A search asks for every day of a season: what a book tells is worked out once.
    private static readonly ConditionalWeakTable<BookState, ConcurrentDictionary<ApiaryId, (ReducedEffect Use, bool Reduced)[]>> Known = [];

    /// <summary>The groups, as known on a day.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="state">The book.</param>
    /// <param name="knowledge">The knowledge files.</param>
    /// <param name="on">The day: uses that began on it or later do not count.</param>
    public static IReadOnlyList<ReducedEffect> In(ApiaryId apiary, BookState state, KnowledgeBase knowledge, DateOnly on) =>
    [
        .. Known.GetOrCreateValue(state).GetOrAdd(apiary, id => Proven(id, state, knowledge))
            .Where(proven => proven.Use.Start < on && proven.Use.Start >= on.AddYears(-Years))
            .GroupBy(proven => proven.Use.ModeId)
            .Select(group => group.Last())
            .Where(latest => latest.Reduced)
            .Select(latest => latest.Use),
    ];

    // Uses of a substance that worked or showed a reduced effect, by their first day.
    private static (ReducedEffect Use, bool Reduced)[] Proven(ApiaryId apiary, BookState state, KnowledgeBase knowledge)
    {
        var uses = state.ControlsIn(apiary);
        if (uses.Count == 0)
            return [];
        var controls = ControlList.Of(state, knowledge);
        var proofs = new ControlProofs(state, knowledge, uses[^1].Facts.Start.AddYears(1), CultureInfo.InvariantCulture);
        var proven = new List<(ReducedEffect, bool)>();
        foreach (var use in uses)
        {
            if (controls.Find(use.Facts.Agent) is not { IsNonChemical: false } agent)
                continue;
            var proof = proofs.Of(use);
            if (proof.ResistanceSignal || proof.Verdict == Verdict.Worked)
                proven.Add((new ReducedEffect(agent.ModeId, use.Facts.Agent, use.Facts.Start), proof.ResistanceSignal));
        }

        return [.. proven];
    }
}
