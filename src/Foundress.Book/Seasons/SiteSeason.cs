using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Judging;

namespace Foundress.Book.Seasons;

/// <summary>The course of the season at an apiary.</summary>
public static class SiteSeason
{
    /// <summary>Latitude taken when none is known: the middle of the temperate band (product choice; the screens say so).</summary>
    public const double AssumedLatitude = 48;

    /// <summary>The climate an apiary follows: its own where the keeper chose one, else the usual one for its latitude.</summary>
    public static Climate ClimateOf(Apiary? apiary, KnowledgeBase knowledge) =>
        knowledge.Climates.TryGet(apiary?.Climate, out var chosen)
            ? chosen
            : knowledge.Climates.DefaultFor(apiary?.Latitude ?? AssumedLatitude);

    /// <summary>The twelve months' phases at an apiary, turned by half a year in the south.</summary>
    public static SeasonYear Of(Apiary? apiary, KnowledgeBase knowledge) =>
        SeasonYear.For(ClimateOf(apiary, knowledge).NorthernMonths, apiary?.Hemisphere ?? Hemisphere.North);

    /// <summary>The twelve months a strip shows: the calendar year in the north, July to June in the south.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="day">A day the strip must contain.</param>
    public static (DateOnly From, DateOnly To) YearAround(Apiary apiary, DateOnly day)
    {
        var first = apiary.Hemisphere == Hemisphere.North
            ? new DateOnly(day.Year, 1, 1)
            : new DateOnly(day.Month >= 7 ? day.Year : day.Year - 1, 7, 1);
        return (first, first.AddYears(1).AddDays(-1));
    }
}
