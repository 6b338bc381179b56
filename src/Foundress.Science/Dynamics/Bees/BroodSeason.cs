using Foundress.Science.Numerics;

namespace Foundress.Science.Dynamics.Bees;

/// <summary>
/// The bees' year at one site: how much of full laying, of wear and of drones there is on each day, and the colony that lives
/// so year after year. Made once for a site and used for all its colonies. Immutable; safe for concurrent use.
/// </summary>
/// <remarks>docs/methods/bees.md.</remarks>
public sealed class BroodSeason
{
    /// <summary>Years after which a colony left to itself has found its yearly course from any beginning.</summary>
    private const int SettlingYears = 25;

    /// <summary>Fewer bees at any time of the year than this are no colony, whatever the figures say.</summary>
    private const double LeastBees = 500;

    private readonly double[] _laying = new double[SeasonWindow.YearDays];
    private readonly double[] _winterBees = new double[SeasonWindow.YearDays];
    private readonly double[] _winterKept = new double[SeasonWindow.YearDays];
    private readonly double[] _droneShare = new double[SeasonWindow.YearDays];
    private readonly double[] _summer = new double[SeasonWindow.YearDays];
    private readonly double[] _winter = new double[SeasonWindow.YearDays];
    private readonly double[] _workersLaid = new double[SeasonWindow.YearDays];
    private readonly double[] _dronesLaid = new double[SeasonWindow.YearDays];

    /// <summary>The year of a climate at a site.</summary>
    /// <param name="climate">The climate, as written for its own latitude in the north.</param>
    /// <param name="lives">How bees grow.</param>
    /// <param name="queens">How long laying stops after what happens to a queen.</param>
    /// <param name="site">The site.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is out of its range; the message names it.</exception>
    /// <exception cref="ArgumentException">With these figures no colony lives through the year.</exception>
    public BroodSeason(BroodClimate climate, BeeLives lives, QueenTimes queens, Site site)
    {
        climate.Check();
        lives.Check();
        queens.Check();
        (Climate, Lives, Queens, Site) = (climate, lives, queens, site);
        DegreesMoved = Moved();
        double spring = DegreesMoved * lives.SpringPerDegree;
        double autumn = DegreesMoved * lives.AutumnPerDegree;
        var laying = climate.LayingIsLocal ? climate.Laying : climate.Laying.Narrowed(spring, autumn);
        var flight = climate.Flight.Narrowed(spring, autumn);
        var drones = climate.Drones.Narrowed(spring, autumn);
        SummerKept = PortableFunctions.Exp(-1d / climate.SummerLife);
        for (int day = 0; day < SeasonWindow.YearDays; day++)
        {
            double dayOfYear = day + 1;
            _laying[day] = (climate.LayingAllYear + ((1d - climate.LayingAllYear) * laying.On(dayOfYear))) * climate.Dearth.Left(dayOfYear);
            _winterBees[day] = 1d - _laying[day];
            double wear = climate.FlightAllYear + ((1d - climate.FlightAllYear) * flight.On(dayOfYear));
            _winterKept[day] = PortableFunctions.Exp(-(climate.WinterLoss + (((1d / climate.SummerLife) - climate.WinterLoss) * wear)));
            _droneShare[day] = climate.DroneShare * drones.On(dayOfYear);
        }

        Settle();
    }

    /// <summary>The climate it was made from.</summary>
    public BroodClimate Climate { get; }

    /// <summary>How bees grow.</summary>
    public BeeLives Lives { get; }

    /// <summary>How long laying stops after what happens to a queen.</summary>
    public QueenTimes Queens { get; }

    /// <summary>The site.</summary>
    public Site Site { get; }

    /// <summary>Degrees towards the pole by which the climate's season was moved for this site, altitude counted in; negative towards the equator.</summary>
    public double DegreesMoved { get; }

    internal ReadOnlySpan<double> Laying => _laying;

    internal ReadOnlySpan<double> WinterBees => _winterBees;

    internal ReadOnlySpan<double> WinterKept => _winterKept;

    internal ReadOnlySpan<double> DroneShare => _droneShare;

    internal double SummerKept { get; }

    internal ReadOnlySpan<double> NaturalSummer => _summer;

    internal ReadOnlySpan<double> NaturalWinter => _winter;

    internal ReadOnlySpan<double> NaturalWorkersLaid => _workersLaid;

    internal ReadOnlySpan<double> NaturalDronesLaid => _dronesLaid;

    /// <summary>The share of full laying on a day, 0 to 1: 0 in a broodless time.</summary>
    public double LayingOn(DateOnly day) => _laying[YearDay(day)];

    /// <summary>The adult bees of a usual colony of the site on a day, nothing being known of it.</summary>
    public double AdultsOn(DateOnly day) => _summer[YearDay(day)] + _winter[YearDay(day)];

    /// <summary>The cells with worker brood of every age in such a colony on a day.</summary>
    public double BroodOn(DateOnly day)
    {
        int today = YearDay(day);
        double cells = 0d;
        for (int age = 0; age < Lives.WorkerDays; age++)
            cells += (age < Lives.WorkerOpenDays ? 1d : Lives.SealedShare) * _workersLaid[(today - age + SeasonWindow.YearDays) % SeasonWindow.YearDays];
        return cells;
    }

    /// <summary>The place of a day in the tables of the year, which are written as in the north.</summary>
    internal int YearDay(DateOnly day)
    {
        int index = Math.Min(day.DayOfYear, SeasonWindow.YearDays) - 1;
        return Site.Hemisphere == Hemisphere.South ? (index + (SeasonWindow.YearDays / 2)) % SeasonWindow.YearDays : index;
    }

    private double Moved()
    {
        double degrees = (Site.DegreesFromEquator ?? Climate.Degrees) - Climate.Degrees;
        if (Site.Altitude is { } metres)
            degrees += (metres - Climate.Altitude) / Lives.MetresPerDegree;
        return Math.Clamp(degrees, -Lives.MostDegrees, Lives.MostDegrees);
    }

    // A colony is let live until its year repeats itself; that year is the usual one of the site.
    private void Settle()
    {
        var run = new BeeRun(this, SettlingYears * SeasonWindow.YearDays);
        for (int day = 0; day < run.Days; day++)
            run.YearDays[day] = (short)(day % SeasonWindow.YearDays);
        run.FirstBees = Lives.HalfLayingBees;
        run.Run();
        int last = run.Days - SeasonWindow.YearDays;
        double least = double.PositiveInfinity;
        for (int day = 0; day < SeasonWindow.YearDays; day++)
        {
            _summer[day] = run.Summer[last + day];
            _winter[day] = run.Winter[last + day];
            _workersLaid[day] = run.WorkersLaid[BeeRun.Before + last + day];
            _dronesLaid[day] = run.DronesLaid[BeeRun.Before + last + day];
            least = Math.Min(least, _summer[day] + _winter[day]);
        }

        if (!(least >= LeastBees))
            throw new ArgumentException($"With these figures a colony falls to {least:F0} bees in its year and does not live. Check laying, lives and losses.");
    }
}
