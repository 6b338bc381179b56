using Foundress.Knowledge;
using Foundress.Science.Dynamics.Bees;

namespace Foundress.Book.Forecasts;

/// <summary>The bees' year where the keeper knows the days of laying better than the climate does.</summary>
public static class OwnYears
{
    /// <summary>
    /// The year of the climate with laying on the keeper's own days; where no colony would live by it (a climate of short-lived bees with a long time
    /// without brood), that of the climate whose own days of laying are nearest and by whose year one does.
    /// </summary>
    /// <param name="knowledge">The climates and the bees' year in them.</param>
    /// <param name="climate">Id of the apiary's climate.</param>
    /// <param name="site">Where it stands.</param>
    /// <param name="laying">The first and the last day of laying, as days of a northern year.</param>
    /// <returns>Null where no colony would live by such days in any climate.</returns>
    /// <exception cref="KnowledgeException">There is no such climate.</exception>
    public static BroodSeason? Of(KnowledgeBase knowledge, string climate, Site site, (double Opens, double Closes) laying)
    {
        var nearest = knowledge.Bees.Seasons.Where(one => one.Id != climate)
            .OrderBy(one => Math.Abs(one.Climate.Laying.Opens - laying.Opens) + Math.Abs(one.Climate.Laying.Closes - laying.Closes))
            .ThenBy(one => one.Id, StringComparer.Ordinal).Select(one => one.Id);
        foreach (var id in nearest.Prepend(climate))
        {
            try
            {
                return knowledge.Bees.SeasonAt(id, site, laying);
            }
            catch (ArgumentException)
            {
                // No colony lives by this climate's figures: the next one is asked.
            }
        }

        return null;
    }
}
