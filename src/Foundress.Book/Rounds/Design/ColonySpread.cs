using System.Globalization;
using Foundress.Book.Changes;
using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;

namespace Foundress.Book.Rounds;

/// <summary>How unequal the colonies of an apiary are taken to be when a round is planned, and how that is known.</summary>
/// <param name="Shape">Shape k of the gamma distribution of their levels, above 0: relative variance 1/k.</param>
/// <param name="Basis">Where it comes from, in words.</param>
/// <param name="FromBook">True when the apiary's own jars tell it.</param>
public sealed record ColonySpread(double Shape, string Basis, bool FromBook)
{
    // Fewer colonies than this say less of the spread than the published figure does.
    private const int FewestColonies = 5;
    private const double LeastShape = 0.05;
    private const double MostShape = 1000d;

    /// <summary>The spread in an apiary: from its latest round (or day) of jars that can tell it, else the documented figure.</summary>
    /// <param name="apiary">The apiary; null for one that is not in the book.</param>
    /// <param name="state">The book.</param>
    /// <param name="knowledge">The documented figure and the known methods.</param>
    /// <param name="method">Id of the counting method to be used; other scales are left aside.</param>
    /// <param name="before">The day of the new round: earlier jars only.</param>
    /// <exception cref="KnowledgeException">The method is not known.</exception>
    public static ColonySpread Of(ApiaryId? apiary, BookState state, KnowledgeBase knowledge, string method, DateOnly before)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(knowledge);
        if (apiary is { } known)
        {
            var visits = ApiaryVisits.Of(known, state, knowledge, knowledge.Methods[method].ScaleId);
            foreach (var visit in visits.Reverse().Where(visit => visit.On < before && visit.Colonies.Count >= FewestColonies))
            {
                var posterior = visit.Posterior(state.ColoniesIn(known, visit.On).Count);
                if (!posterior.SpreadIdentified)
                    continue;
                var median = posterior.Spread.Median;
                var shape = Math.Clamp(1 / (median * median), LeastShape, MostShape);
                return new ColonySpread(
                    shape,
                    Plural.Pick(visit.Colonies.Count, RoundTexts.FormatSpreadFromJars(
                        visit.Colonies.Count, Say.Day(visit.On), Say.Percent(Math.Round(median, 2), CultureInfo.CurrentCulture), shape.ToString("0.0#", CultureInfo.CurrentCulture))),
                    true);
            }
        }

        var figure = knowledge.Sampling.Design.Shape;
        return new ColonySpread(
            figure.Value,
            RoundTexts.FormatSpreadPublished(figure.Value.ToString("0.0#", CultureInfo.CurrentCulture), figure.Source.Text),
            false);
    }
}
