using System.Globalization;
using Foundress.Book.Changes;
using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science.Estimation;

namespace Foundress.Book.Breeding;

/// <summary>Ranks colonies for breeding by the growth of their mites, read between whatever else moved the level.</summary>
/// <param name="state">The book.</param>
/// <param name="knowledge">The known methods and the documented spread of single jars.</param>
/// <param name="culture">How numbers are written in the sentence.</param>
public sealed class BreedingLists(BookState state, KnowledgeBase knowledge, CultureInfo culture)
{
    /// <summary>Ranks the living colonies of some apiaries.</summary>
    /// <param name="apiaries">The apiaries; colonies should share yard and season to be compared.</param>
    /// <param name="from">First day of jars looked at.</param>
    /// <param name="today">Last day.</param>
    public BreedingList Of(IReadOnlyCollection<ApiaryId> apiaries, DateOnly from, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(apiaries);
        var living = apiaries.SelectMany(apiary => state.ColoniesIn(apiary, today)).ToList();
        var scale = UsualScale(living, from, today);
        var courses = living.ToDictionary(colony => colony, colony => Course(colony, from, today, scale));
        var ranked = courses.Where(pair => pair.Value.Stretches.Count > 0).ToList();
        var leftOut = living.Where(colony => courses[colony].Stretches.Count == 0).ToList();
        if (ranked.Count < GrowthRanking.FewestColonies)
        {
            return new BreedingList([], null, leftOut,
                Plural.Pick(ranked.Count, BreedingTexts.FormatTooFew(GrowthRanking.FewestColonies, Say.Day(from), ranked.Count)));
        }

        var ranking = GrowthRanking.Of([.. ranked.Select(pair => pair.Value)], knowledge.Sampling.Design.VisitSpread.Value);
        var byId = ranked.ToDictionary(pair => pair.Value.Colony, pair => pair.Key, StringComparer.Ordinal);
        return new BreedingList([.. ranking.Colonies.Select(growth => (byId[growth.Colony], growth))], ranking, leftOut, Sentence(ranking));
    }

    private string Sentence(GrowthRanking ranking)
    {
        var told = ranking.Colonies.Count(colony => colony.FromJars);
        var hits = Say.Percent(Math.Round(ranking.HitRate, 2), culture);
        return told == 0
            ? BreedingTexts.NothingToRank
            : Plural.Pick(ranking.PickSize, ranking.IsNoise ? BreedingTexts.FormatMostlyChance(ranking.PickSize, hits) : BreedingTexts.FormatTopTrulySlow(ranking.PickSize, hits));
    }

    // Levels of different scales are never compared: the one most jars were counted on is read.
    private string? UsualScale(List<Colony> living, DateOnly from, DateOnly today) => living
        .SelectMany(colony => state.JarsOf(colony.Id))
        .Where(jar => jar.Facts.On >= from && jar.Facts.On <= today)
        .GroupBy(jar => ApiaryVisits.ScaleOf(jar, knowledge))
        .Where(group => group.Key is not null)
        .OrderByDescending(group => group.Count())
        .ThenBy(group => group.Key, StringComparer.Ordinal)
        .FirstOrDefault()?.Key;

    // Days with jars, cut into stretches at each day on which the level was moved by something else.
    private ColonyCourse Course(Colony colony, DateOnly from, DateOnly today, string? scale)
    {
        var visits = state.JarsOf(colony.Id)
            .Where(jar => jar.Facts.On >= from && jar.Facts.On <= today && ApiaryVisits.ScaleOf(jar, knowledge) == scale)
            .GroupBy(jar => jar.Facts.On)
            .OrderBy(day => day.Key)
            .ToList();
        var cuts = Cuts(colony);
        var stretches = new List<List<CourseVisit>>();
        DateOnly? last = null;
        foreach (var visit in visits)
        {
            if (last is not { } before || cuts.Any(cut => cut > before && cut <= visit.Key))
                stretches.Add([]);
            stretches[^1].Add(new CourseVisit(visit.Key.DayNumber, ApiaryVisit.CountsOf([.. visit])));
            last = visit.Key;
        }

        return new ColonyCourse(colony.Id.ToString(), stretches);
    }

    // Splits, unions, queens, brood taken out, controls from their start to their end, and moves.
    private List<DateOnly> Cuts(Colony colony) =>
    [
        .. state.HappeningsOf(colony.Id).Select(happening => happening.On),
        .. state.CoursesOf(colony.Id).SelectMany(course => course.End is { } end ? new[] { course.Start, end } : [course.Start]),
        .. colony.Stays.Select(stay => stay.Since).OfType<DateOnly>(),
    ];
}
