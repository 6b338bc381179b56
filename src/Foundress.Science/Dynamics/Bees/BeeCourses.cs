using System.Runtime.InteropServices;
using Foundress.Science.Numerics;

namespace Foundress.Science.Dynamics.Bees;

/// <summary>Courses of single colonies: the usual year of their site, bent by what the keeper recorded.</summary>
/// <remarks>docs/methods/bees.md. The same input gives the same course on every platform, but for the last digits of a float.</remarks>
public static class BeeCourses
{
    /// <summary>The longest course.</summary>
    public const int MostDays = 3660;

    /// <summary>What happened longer before the course than this no longer shows in it.</summary>
    private const int MostDaysBefore = 400;

    /// <summary>Deviations are fitted, the reckoning is run anew with them, and again: two rounds leave under a hundredth.</summary>
    private const int Rounds = 3;

    /// <summary>A colony may be seen this much larger or smaller than reckoned (natural logarithm); what is beyond is taken as this.</summary>
    private const double MostDeviation = 3d;

    /// <summary>Log spread of what was seen so far from the reckoning that nothing but a count near none, or a crowd, explains it.</summary>
    private const double SureSpread = 0.1;

    /// <summary>Brood below this share of what was seen is out of season: no factor explains it.</summary>
    private const double OutOfSeason = 0.1;

    /// <summary>The course of a colony.</summary>
    /// <param name="season">The season of its site.</param>
    /// <param name="sightings">Its inspections, in any order; those after <paramref name="to"/> are passed over.</param>
    /// <param name="events">What happened to it, in any order, those of one day in the order they happened; those after <paramref name="to"/> are passed over.</param>
    /// <param name="from">First day of the course.</param>
    /// <param name="to">Last day of the course.</param>
    /// <exception cref="ArgumentOutOfRangeException">The course is empty or longer than <see cref="MostDays"/>.</exception>
    public static BeeCourse Of(BroodSeason season, IReadOnlyList<BeeSighting> sightings, IReadOnlyList<BeeEvent> events, DateOnly from, DateOnly to)
    {
        int days = to.DayNumber - from.DayNumber + 1;
        if (days < 1)
            throw new ArgumentOutOfRangeException(nameof(to), to, $"A course must end on or after its first day, {from:yyyy-MM-dd}.");
        if (days > MostDays)
            throw new ArgumentOutOfRangeException(nameof(to), to, $"A course has at most {MostDays} days; from {from:yyyy-MM-dd} to {to:yyyy-MM-dd} there are {days}.");

        var origin = Origin(sightings, events, from);
        var seen = sightings.Where(sighting => sighting.On >= origin && sighting.On <= to).OrderBy(sighting => sighting.On).ToArray();
        var happened = events.Where(one => one.On >= origin && one.On <= to).OrderBy(one => one.On).ToArray();
        var run = NewRun(season, origin, to);
        var unseen = new double[run.Days];
        if (happened.Length > 0)
        {
            run.Changes = BeeChange.Of(happened, origin, season.Queens);
            run.Queen = new double[run.Days];
            QueenPlan.Fill(season, happened, origin, run.YearDays, run.Queen, unseen);
        }

        run.StartsEmpty = Array.Exists(happened, one => one.Kind == BeeEventKind.Began);
        var adultVariances = new double[run.Days];
        var broodVariances = new double[run.Days];
        Fit(season, run, seen, origin, unseen, adultVariances, broodVariances);
        return Course(run, from, from.DayNumber - origin.DayNumber, days, adultVariances, broodVariances);
    }

    private static DateOnly Origin(IReadOnlyList<BeeSighting> sightings, IReadOnlyList<BeeEvent> events, DateOnly from)
    {
        int earliest = Math.Max(from.DayNumber - MostDaysBefore, DateOnly.MinValue.DayNumber);
        int origin = from.DayNumber;
        foreach (var sighting in sightings)
        {
            if (sighting.On.DayNumber >= earliest)
                origin = Math.Min(origin, sighting.On.DayNumber);
        }

        foreach (var one in events)
        {
            if (one.On.DayNumber >= earliest)
                origin = Math.Min(origin, one.On.DayNumber);
        }

        return DateOnly.FromDayNumber(origin);
    }

    private static BeeRun NewRun(BroodSeason season, DateOnly origin, DateOnly to)
    {
        var run = new BeeRun(season, to.DayNumber - origin.DayNumber + 1);
        for (int day = 0; day < run.Days; day++)
            run.YearDays[day] = (short)season.YearDay(DateOnly.FromDayNumber(origin.DayNumber + day));
        return run;
    }

    private static void Fit(
        BroodSeason season, BeeRun run, BeeSighting[] sightings, DateOnly origin, double[] unseen, double[] adultVariances, double[] broodVariances)
    {
        var lives = season.Lives;
        double adultVariance = lives.AdultSpread * lives.AdultSpread;
        double broodVariance = lives.BroodSpread * lives.BroodSpread;
        run.Run();
        if (sightings.Length == 0)
        {
            Array.Fill(adultVariances, adultVariance);
            DeviationSmoother.Fill([], broodVariance, lives.BroodMemory, unseen, new double[run.Days], broodVariances);
            return;
        }

        run.Extra = OutOfSeasonEggs(run, sightings, origin, lives);
        if (run.Extra is not null)
            run.Run();
        run.AdultDeviation = new double[run.Days];
        run.BroodDeviation = new double[run.Days];
        var nothing = new double[run.Days];
        var adults = new List<DeviationSeen>(sightings.Length);
        var brood = new List<DeviationSeen>(sightings.Length);
        for (int round = 0; round < Rounds; round++)
        {
            adults.Clear();
            brood.Clear();
            foreach (var sighting in sightings)
            {
                int day = sighting.On.DayNumber - origin.DayNumber;
                if (sighting.Adults is { } bees && run.Bees(day) is > 0d and var reckoned)
                    adults.Add(Seen(day, bees, reckoned, run.AdultDeviation[day], sighting.AdultLogSpread));

                // The cells of a day were laid over the weeks before it: what was seen speaks of the middle of them.
                int laid = Math.Max(day - (lives.WorkerDays / 2), 0);
                if (sighting.Brood is { } cells && run.Brood(day) is > 0d and var there && there >= OutOfSeason * cells)
                    brood.Add(Seen(laid, cells, there, run.BroodDeviation[laid], sighting.BroodLogSpread));
            }

            DeviationSmoother.Fill(CollectionsMarshal.AsSpan(adults), adultVariance, lives.AdultMemory, nothing, run.AdultDeviation, adultVariances);
            DeviationSmoother.Fill(CollectionsMarshal.AsSpan(brood), broodVariance, lives.BroodMemory, unseen, run.BroodDeviation, broodVariances);
            run.Run();
        }
    }

    private static DeviationSeen Seen(int day, double seen, double reckoned, double taken, double logSpread)
    {
        // The reckoning already holds the deviation taken for that day in the round before.
        double deviation = PortableFunctions.Log(Math.Max(seen, 1e-9) / reckoned) + taken;
        bool beyond = Math.Abs(deviation) > MostDeviation;
        double spread = beyond ? Math.Min(logSpread, SureSpread) : logSpread;
        return new(day, Math.Clamp(deviation, -MostDeviation, MostDeviation), spread * spread);
    }

    private static double[]? OutOfSeasonEggs(BeeRun run, BeeSighting[] sightings, DateOnly origin, BeeLives lives)
    {
        double[]? eggs = null;
        foreach (var sighting in sightings)
        {
            int seen = sighting.On.DayNumber - origin.DayNumber;
            if (sighting.Brood is not { } cells || run.Brood(seen) >= OutOfSeason * cells || run.Bees(seen) <= 0d)
                continue;
            eggs ??= new double[run.Days];
            double each = cells / (lives.WorkerOpenDays + (lives.SealedShare * lives.WorkerSealedDays));
            for (int day = 0; day < run.Days; day++)
            {
                int away = Math.Max(Math.Max(seen - lives.WorkerDays - day, day - seen), 0);
                eggs[day] = Math.Max(eggs[day], each * PortableFunctions.Exp(-2d * away / lives.BroodMemory));
            }
        }

        return eggs;
    }

    private static BeeCourse Course(BeeRun run, DateOnly from, int skip, int days, double[] adultVariances, double[] broodVariances)
    {
        var adults = new float[days];
        var workers = new float[days];
        var drones = new float[days];
        var adultSpread = new float[days];
        var broodSpread = new float[days];
        for (int day = 0; day < days; day++)
        {
            adults[day] = (float)run.Bees(skip + day);
            workers[day] = (float)run.WorkerSealed(skip + day);
            drones[day] = (float)run.DroneSealed(skip + day);
            adultSpread[day] = (float)Math.Sqrt(adultVariances[skip + day]);
            broodSpread[day] = (float)Math.Sqrt(broodVariances[skip + day]);
        }

        return new(from, adults, workers, drones, adultSpread, broodSpread)
        {
            Taken = [.. run.Taken.Where(taken => taken.Day >= skip).Select(taken => taken with { Day = taken.Day - skip })],
        };
    }
}
