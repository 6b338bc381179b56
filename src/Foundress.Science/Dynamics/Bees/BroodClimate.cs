namespace Foundress.Science.Dynamics.Bees;

/// <summary>The bees' year in a climate, written for the north and for the climate's own latitude. All figures are data.</summary>
public sealed record BroodClimate
{
    /// <summary>Degrees from the equator of the place it is written for, 0 to 90.</summary>
    public required double Degrees { get; init; }

    /// <summary>Metres above the sea of that place.</summary>
    public double Altitude { get; init; }

    /// <summary>When the queen lays.</summary>
    public required SeasonWindow Laying { get; init; }

    /// <summary>Whether <see cref="Laying"/> is the site's own, not to be moved with its latitude.</summary>
    public bool LayingIsLocal { get; init; }

    /// <summary>The share of full laying that goes on outside that season: 0 where there is a broodless time, 1 where the queen lays all year alike.</summary>
    public double LayingAllYear { get; init; }

    /// <summary>A time of less laying within the season; none by default.</summary>
    public Dearth Dearth { get; init; }

    /// <summary>Eggs a day at the height of the season, were the colony without limit, above 0.</summary>
    public required double PeakLaying { get; init; }

    /// <summary>When bees fly and wear out.</summary>
    public required SeasonWindow Flight { get; init; }

    /// <summary>The share of full wear that goes on outside that season, 0 to 1.</summary>
    public double FlightAllYear { get; init; }

    /// <summary>Mean days a summer bee lives, above 1.</summary>
    public required double SummerLife { get; init; }

    /// <summary>Share of the winter bees that dies in a day when none fly, above 0 and below 0.1.</summary>
    public required double WinterLoss { get; init; }

    /// <summary>When drones are reared.</summary>
    public required SeasonWindow Drones { get; init; }

    /// <summary>Share of the eggs that are drones at the height of that season, 0 to 0.5.</summary>
    public required double DroneShare { get; init; }

    /// <summary>The same year with laying from one day to another, as the keeper knows it, and none outside; the rise and the decline keep their length.</summary>
    /// <param name="opens">Day of the year, as in the north, on which laying begins.</param>
    /// <param name="closes">Day on which it ends.</param>
    /// <exception cref="ArgumentOutOfRangeException">The days do not make a season within one year.</exception>
    public BroodClimate WithLaying(double opens, double closes)
    {
        if (!(closes > opens && closes - opens <= SeasonWindow.YearDays))
            throw new ArgumentOutOfRangeException(nameof(closes), closes, $"Laying that begins on day {opens} must end after it and within a year.");
        return this with { Laying = Laying.Narrowed(opens - Laying.Opens, Laying.Closes - closes), LayingAllYear = 0d, LayingIsLocal = true };
    }

    /// <summary>Refuses figures with which nothing can be reckoned.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A figure is out of its range; the message names it.</exception>
    public void Check()
    {
        BeeLives.Within(Degrees, 0, 90, nameof(Degrees));
        BeeLives.Within(LayingAllYear, 0, 1, nameof(LayingAllYear));
        BeeLives.Within(PeakLaying, 1, 1e5, nameof(PeakLaying));
        BeeLives.Within(FlightAllYear, 0, 1, nameof(FlightAllYear));
        BeeLives.Within(SummerLife, 1, 1000, nameof(SummerLife));
        BeeLives.Within(WinterLoss, 1e-5, 0.1, nameof(WinterLoss));
        BeeLives.Within(DroneShare, 0, 0.5, nameof(DroneShare));
    }
}
