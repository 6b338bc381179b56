using Foundress.Book.Judging;
using Foundress.Knowledge;

namespace Foundress.Book.Rounds;

/// <summary>What a round is to tell apart in an apiary.</summary>
/// <param name="Harmless">A level at which a control would be wasted, mites per 100 bees, above 0.</param>
/// <param name="Harmful">A level at which waiting does harm, mites per 100 bees, above <paramref name="Harmless"/>.</param>
/// <param name="ErrorChance">Wanted chance of either wrong decision of a round that may stop early, above 0 and below 0.5.</param>
public sealed record RoundAim(double Harmless, double Harmful, double ErrorChance)
{
    /// <summary>The aim that goes with a line until the keeper says otherwise.</summary>
    /// <param name="lines">The lines in force, in mites per 100 bees.</param>
    /// <param name="knowledge">The documented shares of the line.</param>
    public static RoundAim For(LinesInForce lines, KnowledgeBase knowledge)
    {
        var design = knowledge.Sampling.Design;
        return new RoundAim(
            Math.Round(lines.Deciding * design.HarmlessShareOfLine.Value / 100, 2),
            Math.Round(lines.Deciding * design.HarmfulShareOfLine.Value / 100, 2),
            design.ErrorChance.Value / 100);
    }
}
