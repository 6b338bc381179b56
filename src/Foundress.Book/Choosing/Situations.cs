using Foundress.Book.Journal;
using Foundress.Book.Proving;
using Foundress.Book.Records;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science.Choosing;
using Foundress.Science.Judging;

namespace Foundress.Book.Choosing;

/// <summary>The situation of colonies as the book has it.</summary>
public static class Situations
{
    /// <summary>An inspection older than this says nothing of supers and brood any more (product choice).</summary>
    public const int FreshDays = 21;

    /// <summary>The situation of some colonies of an apiary on a day. They are held to the most demanding among them: supers on one are supers on, brood in one is brood.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="colonies">The colonies to be controlled; at least one.</param>
    /// <param name="state">The book.</param>
    /// <param name="knowledge">Climates.</param>
    /// <param name="start">The day it would start.</param>
    /// <param name="forecast">A forecast; the keeper's normals stand in for days it lacks.</param>
    public static Situation Of(
        Apiary apiary, IReadOnlyCollection<ColonyId> colonies, BookState state, KnowledgeBase knowledge, DateOnly start, IReadOnlyDictionary<DateOnly, DayTemperatures>? forecast = null)
    {
        var year = SiteSeason.Of(apiary, knowledge);
        var seen = colonies.Select(colony => Fresh(state, colony, start)).ToArray();
        var frames = seen.Select(all => all.LastOrDefault(facts => facts.FramesOfBrood is not null)?.FramesOfBrood).ToArray();
        var supers = seen.Select(all => all.LastOrDefault(facts => facts.SupersOn is not null)?.SupersOn).ToArray();
        var cluster = seen.Select(all => all.LastOrDefault(facts => facts.Clustered is not null)?.Clustered).ToArray();
        var days = state.Days.GetValueOrDefault(apiary.Id);
        return new(
            start,
            year.PhaseOn(start),
            Weather(apiary, state, forecast),
            supers.Any(on => on == true) ? true : supers.Length > 0 && supers.All(on => on == false) ? false : null,
            SupersDue: days?.SupersOn,
            HarvestOn: days?.HarvestOn,
            Brood: frames.Any(brood => brood > 0) ? BroodState.Some : frames.Length > 0 && frames.All(brood => brood == 0) ? BroodState.None : null,
            BroodFrames: frames.Length > 0 && frames.All(brood => brood is not null) ? frames.Min() : null,
            ClusterFrom: ClusterFrom(year, start),
            Jurisdiction: state.Policy.Jurisdiction,
            CertifiedOrganic: state.Policy.CertifiedOrganic,
            Gear: state.Policy.Gear,
            Courses: [.. colonies.SelectMany(state.CoursesOf)],
            Clustered: cluster.Any(seated => seated == true) ? true : cluster.Length > 0 && cluster.All(seated => seated == false) ? false : null,
            Reduced: ReducedEffects.In(apiary.Id, state, knowledge, start));
    }

    /// <summary>The weather to reckon with at an apiary: the forecast, and the keeper's normals for the rest; null when there is neither.</summary>
    public static ITemperatures? Weather(Apiary apiary, BookState state, IReadOnlyDictionary<DateOnly, DayTemperatures>? forecast = null)
    {
        MonthlyNormals? normals = state.Normals.TryGetValue(apiary.Id, out var record) ? Normals(record) : null;
        return forecast is { Count: > 0 } ? new TemperatureForecast(forecast, normals) : normals;
    }

    // A record of another device that breaks the rules is kept in the book and not reckoned with.
    private static MonthlyNormals? Normals(NormalsRecord record) =>
        record.Highs.Count == 12 && record.Lows.Count == 12 && record.Lows.Zip(record.Highs).All(month => month.First >= -60 && month.First <= month.Second && month.Second <= 60)
            ? new MonthlyNormals(record.Lows, record.Highs)
            : null;

    private static InspectionRecord[] Fresh(BookState state, ColonyId colony, DateOnly start) =>
        [.. state.InspectionsOf(colony).Select(inspection => inspection.Facts).Where(facts => facts.On <= start && facts.On >= start.AddDays(-FreshDays))];

    private static DateOnly? ClusterFrom(SeasonYear year, DateOnly start)
    {
        foreach (var span in year.Spans(start, start.AddYears(1)))
        {
            if (span.Phase.IsDormant())
                return span.From;
        }

        return null;
    }
}
