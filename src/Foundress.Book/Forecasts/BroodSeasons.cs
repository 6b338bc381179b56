using System.Collections.Concurrent;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Dynamics.Bees;

namespace Foundress.Book.Forecasts;

/// <summary>The bees' year at each apiary. Making one takes some milliseconds in a browser, so each site's is made once and kept.</summary>
/// <param name="knowledge">The climates and the bees' year in them.</param>
/// <remarks>Safe for concurrent use.</remarks>
public sealed class BroodSeasons(KnowledgeBase knowledge)
{
    private readonly ConcurrentDictionary<(string Climate, Site Site, (double Opens, double Closes)? Own), BroodSeason> _made = [];

    /// <summary>The knowledge it takes the climates from.</summary>
    public KnowledgeBase Knowledge => knowledge;

    /// <summary>The bees' year at an apiary: of its climate, moved to its latitude and altitude where they are known, with laying in the keeper's own months where they are given and a colony can live by them.</summary>
    /// <param name="apiary">The apiary; null for one of which nothing is known.</param>
    public BroodSeason At(Apiary? apiary)
    {
        var climate = SiteSeason.ClimateOf(apiary, knowledge).Id;
        var site = new Site(apiary?.Hemisphere ?? Hemisphere.North, apiary?.Latitude is { } latitude ? Math.Abs(latitude) : null, apiary?.Altitude);
        var own = apiary is { BroodFrom: { } from, BroodTo: { } to } ? OwnSeason.DaysOf(from, to, apiary.Hemisphere == Hemisphere.South) : null;
        return _made.GetOrAdd((climate, site, own), key =>
            (key.Own is { } days ? OwnYears.Of(knowledge, key.Climate, key.Site, days) : null) ?? knowledge.Bees.SeasonAt(key.Climate, key.Site));
    }
}
