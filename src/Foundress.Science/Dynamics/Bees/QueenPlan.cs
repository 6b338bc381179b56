namespace Foundress.Science.Dynamics.Bees;

/// <summary>On which days a queen lays, and how sure that is, from what happened to queens.</summary>
internal static class QueenPlan
{
    private const double Always = -1e9;
    private const double Never = 1e9;

    /// <summary>Fills the share of her season's rate the queen lays on each day.</summary>
    /// <param name="season">The season.</param>
    /// <param name="ordered">The events by day.</param>
    /// <param name="first">The first day.</param>
    /// <param name="yearDays">For each day its place in the season's tables.</param>
    /// <param name="queen">Filled with 0 to 1 for each day.</param>
    /// <param name="unseen">Filled with the variance to add to the logarithm of the brood on each day.</param>
    internal static void Fill(BroodSeason season, IReadOnlyList<BeeEvent> ordered, DateOnly first, ReadOnlySpan<short> yearDays, double[] queen, double[] unseen)
    {
        var times = season.Queens;
        double from = Always;
        bool assumed = false;
        int next = 0;
        for (int day = 0; day < queen.Length; day++)
        {
            while (next < ordered.Count && ordered[next].On.DayNumber - first.DayNumber == day)
            {
                (from, assumed) = After(season, ordered[next], day, yearDays, from, assumed);
                next++;
            }

            queen[day] = day < from ? 0d : times.ToFull == 0d ? 1d : SeasonWindow.Step((day + 1d - from) / times.ToFull);
            if (assumed && day >= from)
            {
                unseen[day] = times.UnseenSpread * times.UnseenSpread;
                assumed = false;
            }
        }
    }

    private static (double From, bool Assumed) After(BroodSeason season, BeeEvent happened, int day, ReadOnlySpan<short> yearDays, double from, bool assumed)
    {
        var times = season.Queens;
        switch (happened.Kind)
        {
            case BeeEventKind.Began:
                return happened.LaysAfter is { } wait
                    ? (wait == 0d ? Always : day + wait, false)
                    : (Mates(season, yearDays[day]) ? day + times.Raised : Never, true);
            case BeeEventKind.QueenLost:
                return (from <= day && season.Laying[yearDays[day]] > 0d && Mates(season, yearDays[day]) ? day + times.Raised : Never, true);
            case BeeEventKind.QueenCaged:
                return (day + times.Caged + times.AfterRelease, true);
            case BeeEventKind.QueenReleased:
                return from <= day ? (from, assumed) : (day + times.AfterRelease, false);
            case BeeEventKind.NewQueenLaying:
                return from <= day ? (from, assumed) : (day, false);
            case BeeEventKind.Swarmed:
                return (day + times.AfterSwarm, true);
            default:
                return (from, assumed);
        }
    }

    /// <summary>Whether drones fly when a queen lost today would have a successor ready: their eggs must have been laid long enough before.</summary>
    private static bool Mates(BroodSeason season, int yearDay)
    {
        int laid = yearDay + (int)(season.Queens.ToMating - season.Lives.DroneDays - season.Queens.DroneRipening);
        return season.DroneShare[((laid % SeasonWindow.YearDays) + SeasonWindow.YearDays) % SeasonWindow.YearDays] > 0d;
    }
}
