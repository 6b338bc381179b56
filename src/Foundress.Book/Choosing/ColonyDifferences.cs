using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;

namespace Foundress.Book.Choosing;

/// <summary>In what colonies that are to be controlled together differ, where that decides which controls are workable.</summary>
public static class ColonyDifferences
{
    /// <summary>A sentence for each thing in which they differ by the inspections of the last weeks; none when they are alike.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="colonies">The colonies.</param>
    /// <param name="state">The book.</param>
    /// <param name="knowledge">Climates.</param>
    /// <param name="on">The day a control would start.</param>
    public static IReadOnlyList<string> Of(Apiary apiary, IReadOnlyCollection<Colony> colonies, BookState state, KnowledgeBase knowledge, DateOnly on)
    {
        var each = colonies.Select(colony => (colony.Name, Situation: Situations.Of(apiary, [colony.Id], state, knowledge, on))).ToArray();
        return
        [
            .. new[]
            {
                Sentence(each, one => one.Brood is { } brood ? brood == BroodState.Some : null, ChoosingTexts.FormatBroodSeenIn, ChoosingTexts.FormatNoBroodIn),
                Sentence(each, one => one.SupersOn, ChoosingTexts.FormatSupersOn, ChoosingTexts.FormatSupersNotOn),
                Sentence(each, one => one.Clustered, ChoosingTexts.FormatClusteredAre, ChoosingTexts.FormatNotClusteredAre),
            }.OfType<string>(),
        ];
    }

    private static string? Sentence((string Name, Situation Situation)[] each, Func<Situation, bool?> read, Func<string, string> some, Func<string, string> none)
    {
        string[] Named(bool? wanted) => [.. each.Where(one => read(one.Situation) == wanted).Select(one => one.Name)];
        var (yes, no, unknown) = (Named(true), Named(false), Named(null));
        if (yes.Length == 0 || no.Length + unknown.Length == 0)
            return null;
        var parts = new List<string> { some(Say.List(yes)) };
        if (no.Length > 0)
            parts.Add(none(Say.List(no)));
        if (unknown.Length > 0)
            parts.Add(ChoosingTexts.FormatNotNotedIn(Situations.FreshDays, Say.List(unknown)));
        return string.Join("; ", parts) + ".";
    }
}
