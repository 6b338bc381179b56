using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Dynamics;
using Foundress.Science.Dynamics.Bees;
using Foundress.Science.Forecasting;

namespace Foundress.Book.Forecasting;

/// <summary>Puts what the record and the knowledge files say of a colony together into a history that can be followed.</summary>
/// <remarks>Keep one for all colonies of a site: it keeps the site's year. Not safe for concurrent use.</remarks>
public sealed class HistoryBuilder
{
    /// <summary>So many days before the first count the reckoning starts, for the cells to find their balance.</summary>
    internal const int LeadDays = 28;

    private readonly KnowledgeBase _knowledge;
    private readonly BroodSeason _season;
    private readonly Hemisphere _hemisphere;
    private readonly Dictionary<(DateOnly From, DateOnly To), BeeCourse> _plain = [];

    /// <summary>A builder for a site.</summary>
    /// <param name="knowledge">The knowledge files.</param>
    /// <param name="latitude">Degrees, south negative, -90 to 90.</param>
    /// <param name="altitude">Metres above the sea, -430 to 6,000; null when not known.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public HistoryBuilder(KnowledgeBase knowledge, double latitude, double? altitude = null)
        : this(knowledge, knowledge.Bees.SeasonAt(knowledge.Climates.DefaultFor(latitude).Id, Site.At(latitude, altitude)))
    {
    }

    /// <summary>A builder for a site whose year is known.</summary>
    /// <param name="knowledge">The knowledge files.</param>
    /// <param name="season">The bees' year at the site.</param>
    public HistoryBuilder(KnowledgeBase knowledge, BroodSeason season) =>
        (_knowledge, _season, _hemisphere) = (knowledge, season, season.Site.Hemisphere);

    /// <summary>The share of the mites on the bees that a method brings off: the mean of what sources found, or of the wash where none was found.</summary>
    /// <param name="knowledge">The knowledge files.</param>
    /// <param name="methodId">The method.</param>
    /// <exception cref="KnowledgeException">The method is not known.</exception>
    public static double RecoveryOf(KnowledgeBase knowledge, string methodId)
    {
        var method = knowledge.Methods[methodId];
        var found = method.Recoveries.Count > 0 ? method : knowledge.Methods.First(one => one.IsJar && one.Recoveries.Count > 0);
        return Math.Clamp(found.Recoveries.Average(recovery => recovery.Share.Value) / 100, 0.05, 1);
    }

    /// <summary>The counting method used most, on whose scale levels are foretold; the first in the knowledge files where there is none.</summary>
    /// <param name="methodIds">The methods of the jars.</param>
    /// <param name="knowledge">The knowledge files.</param>
    internal static string UsualMethod(IEnumerable<string> methodIds, KnowledgeBase knowledge) =>
        methodIds.GroupBy(id => id, StringComparer.Ordinal)
            .OrderByDescending(group => group.Count()).ThenBy(group => group.Key, StringComparer.Ordinal).FirstOrDefault()?.Key
        ?? knowledge.Methods.First(method => method is { IsJar: true, IsHistoric: false }).Id;

    /// <summary>The history of a colony.</summary>
    /// <param name="colony">Its record; jars before <paramref name="start"/> are passed over.</param>
    /// <param name="start">The day the reckoning starts at, the same for all colonies of an apiary.</param>
    /// <param name="to">The last day needed.</param>
    /// <param name="asOf">Jars and inspections of later days are not used.</param>
    public ColonyHistory Build(ForecastColony colony, DateOnly start, DateOnly to, DateOnly asOf)
    {
        var kills = ControlEffects.Kills(colony.Controls, start);
        if (kills.Count > ColonyDays.MostControls)
            kills = [.. kills.Skip(kills.Count - ColonyDays.MostControls)];
        var bees = Bees(colony, start, to, asOf);
        var days = ColonyDays.Of(bees, _knowledge.Mites.Life, _hemisphere, [.. kills.Select(kill => kill.Effect)], ControlEffects.Taken(bees));
        var evidence = new List<Evidence>();
        foreach (var jar in colony.Jars)
        {
            if (jar.On >= start && jar.On <= asOf)
                evidence.Add(Evidence.Jar(jar.On.DayNumber - start.DayNumber, jar.Mites, jar.Bees, RecoveryOf(_knowledge, jar.MethodId), _knowledge.Mites.Priors.JarSize));
        }

        return new ColonyHistory(days, 0, _knowledge.Mites.UsualLevel(start, _hemisphere).PerBee, evidence, [.. kills.Select(kill => kill.Key)]);
    }

    private BeeCourse Bees(ForecastColony colony, DateOnly start, DateOnly to, DateOnly asOf)
    {
        var events = ControlEffects.BeeEvents(colony.Controls, _knowledge.Bees.Frames);
        BeeSighting[] sightings = [.. colony.Inspections
            .Where(seen => seen.On <= asOf)
            .Select(seen => _knowledge.Bees.Frames.Sighting(seen.On, seen.FramesOfBees, seen.FramesOfBrood))];
        if (events.Count > 0 || sightings.Length > 0)
            return BeeCourses.Of(_season, sightings, events, start, to);
        if (!_plain.TryGetValue((start, to), out var course))
            _plain[(start, to)] = course = BeeCourses.Of(_season, [], [], start, to);
        return course;
    }
}
