using System.Globalization;
using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Estimation;

namespace Foundress.Book.Changes;

/// <summary>Works out what changed since the visit before.</summary>
/// <param name="state">The book.</param>
/// <param name="knowledge">The known methods.</param>
/// <param name="confidence">Confidence of the intervals, above 0 and below 1.</param>
/// <param name="culture">How numbers are written in the sentences.</param>
public sealed class ChangeReader(BookState state, KnowledgeBase knowledge, double confidence, CultureInfo culture)
{
    /// <summary>The change of an apiary since its last visit before one.</summary>
    /// <param name="visit">The later visit.</param>
    /// <param name="posterior">What it says of the apiary.</param>
    /// <returns>None when there is no earlier visit on the same scale with at least two colonies.</returns>
    public ChangeSince? OfApiary(ApiaryVisit visit, ApiaryPosterior posterior)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(posterior);
        var first = visit.Colonies.SelectMany(colony => colony.Value).Min(jar => jar.Facts.On);
        var earlier = ApiaryVisits.Of(visit.Apiary, state, knowledge, knowledge.Methods[visit.Method].ScaleId)
            .LastOrDefault(one => one.On < first && one.Colonies.Count >= 2);
        if (earlier is null)
            return null;
        var days = visit.On.DayNumber - earlier.On.DayNumber;
        var before = earlier.Posterior(state.ColoniesIn(visit.Apiary, earlier.On).Count);
        var twice = visit.Colonies
            .Join(earlier.Colonies, later => later.Key, one => one.Key, (later, one) => (Colony: later.Key, Change: OfColony(later.Key, one.Value, later.Value)))
            .Where(one => one.Change is not null)
            .Select(one => (one.Colony, one.Change!))
            .OrderByDescending(one => one.Item2.PerDay)
            .ToList();
        var controlled = state.ControlsIn(visit.Apiary).Any(control => control.Facts.Start > earlier.On && control.Facts.Start <= visit.On);
        return Told(LevelChange.OfApiary(before, posterior, days), earlier.On, days, isMean: true, twice, controlled);
    }

    /// <summary>The change of a colony between its last two visits on one scale.</summary>
    /// <returns>None when it has no two days with jars on one scale.</returns>
    public ChangeSince? OfColony(ColonyId colony)
    {
        var jars = state.JarsOf(colony);
        var last = jars.LastOrDefault(jar => ApiaryVisits.ScaleOf(jar, knowledge) is not null);
        if (last is null)
            return null;
        var scale = ApiaryVisits.ScaleOf(last, knowledge);
        var visits = jars.Where(jar => ApiaryVisits.ScaleOf(jar, knowledge) == scale).GroupBy(jar => jar.Facts.On).TakeLast(2).ToList();
        return visits.Count < 2 ? null : OfColony(colony, [.. visits[0]], [.. visits[1]]);
    }

    private ChangeSince? OfColony(ColonyId colony, IReadOnlyList<Jar> earlier, IReadOnlyList<Jar> later)
    {
        var since = earlier.Max(jar => jar.Facts.On);
        var days = later.Max(jar => jar.Facts.On).DayNumber - since.DayNumber;
        var controlled = state.CoursesOf(colony).Any(course => course.Start > since && course.Start < since.AddDays(days));
        return days < 1 ? null : Told(LevelChange.OfColony(ApiaryVisit.CountsOf(earlier), ApiaryVisit.CountsOf(later), days), since, days, isMean: false, [], controlled);
    }

    private ChangeSince Told(LevelChange change, DateOnly since, int days, bool isMean, IReadOnlyList<(ColonyId Colony, ChangeSince Change)> colonies, bool controlled)
    {
        var ratio = change.RatioInterval(confidence);
        var perDay = change.GrowthPerDayInterval(confidence);
        var grown = change.ChanceGrown;
        var (times, lower, upper) = (Times(change.MedianRatio), Times(ratio.Lower), Times(ratio.Upper));
        var (growth, slowest, fastest) = (Say.Growth(change.MedianGrowthPerDay, culture), Say.Growth(perDay.Lower, culture), Say.Growth(perDay.Upper, culture));
        var changed = isMean
            ? ChangeTexts.FormatMeanChanged(times, days, lower, upper, growth, slowest, fastest)
            : ChangeTexts.FormatLevelChanged(times, days, lower, upper, growth, slowest, fastest);
        var sentence = $"{Plural.Pick(days, changed)} {Verdict(grown)}";
        if (controlled)
            sentence += " " + ChangeTexts.ControlBetween;
        return new ChangeSince(since, days, change.MedianRatio, ratio, change.MedianGrowthPerDay, perDay, grown, colonies, sentence);
    }

    private string Verdict(Chance grown) => grown.Value switch
    {
        >= 0.975 => ChangeTexts.Grown,
        <= 0.025 => ChangeTexts.Fallen,
        _ => ChangeTexts.FormatNotSettled(Say.InHundred(grown, culture)),
    };

    private string Times(double ratio) => ratio >= 100 ? ChangeTexts.Over100 : ratio.ToString(ratio >= 10 ? "0" : ratio >= 0.1 ? "0.0#" : "0.0##", culture);
}
