using Foundress.Science.Dynamics.Bees;

namespace Foundress.Knowledge;

/// <summary>What is taken as given about bees and brood through the year.</summary>
/// <param name="Lives">How bees grow and how a colony's size holds its queen back.</param>
/// <param name="Queens">How long laying stops after what happens to a queen.</param>
/// <param name="Frames">What a keeper's frames are taken as.</param>
/// <param name="Seasons">The bees' year in each climate, by the climate's name.</param>
public sealed record BeeFacts(BeeLives Lives, QueenTimes Queens, FrameCounts Frames, Catalog<ClimateSeason> Seasons)
{
    /// <summary>The bees' year of a climate at a site. It takes some milliseconds in a browser: keep it for all colonies of the site.</summary>
    /// <param name="climate">Name of the climate.</param>
    /// <param name="site">The site.</param>
    /// <param name="laying">The first and last day of laying the keeper knows, as days of a northern year; null for the climate's.</param>
    /// <exception cref="KnowledgeException">There is no such climate.</exception>
    /// <exception cref="ArgumentException">The figures, read from files of the keeper's own, let no colony live at that site.</exception>
    public BroodSeason SeasonAt(string climate, Site site, (double Opens, double Closes)? laying = null)
    {
        var year = Seasons[climate].Climate;
        return new(laying is { } own ? year.WithLaying(own.Opens, own.Closes) : year, Lives, Queens, site);
    }
}
