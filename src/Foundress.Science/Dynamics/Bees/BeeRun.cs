using Foundress.Science.Numerics;

namespace Foundress.Science.Dynamics.Bees;

/// <summary>
/// The daily reckoning of one colony: eggs laid, cells sealed, bees emerging and dying. Brood is kept as the eggs of each day,
/// so that what is sealed or emerges on a day is read off, and no cells are moved about.
/// </summary>
internal sealed class BeeRun
{
    /// <summary>Days of laying kept from before the first day, so that there is brood on it.</summary>
    internal const int Before = BeeLives.MostBroodDays;

    private readonly BroodSeason _season;

    internal BeeRun(BroodSeason season, int days)
    {
        _season = season;
        Days = days;
        YearDays = new short[days];
        Summer = new double[days];
        Winter = new double[days];
        WorkersLaid = new double[Before + days];
        DronesLaid = new double[Before + days];
    }

    internal int Days { get; }

    /// <summary>For each day its place in the season's tables.</summary>
    internal short[] YearDays { get; }

    /// <summary>Short-lived bees at the close of each day, before any deviation.</summary>
    internal double[] Summer { get; }

    /// <summary>Bees that live long while few fly, likewise.</summary>
    internal double[] Winter { get; }

    /// <summary>Worker eggs of each day, from <see cref="Before"/> days before the first.</summary>
    internal double[] WorkersLaid { get; }

    /// <summary>Drone eggs of each day.</summary>
    internal double[] DronesLaid { get; }

    /// <summary>Whether there was no colony before the first change; otherwise it begins as the usual one of the season.</summary>
    internal bool StartsEmpty { get; set; }

    /// <summary>Bees to begin with instead, without brood: for finding the usual year itself.</summary>
    internal double? FirstBees { get; set; }

    /// <summary>How much of her season's rate the queen lays on each day, 0 to 1; null for all of it.</summary>
    internal double[]? Queen { get; set; }

    /// <summary>Eggs a day that no season explains, from brood seen out of season; null for none.</summary>
    internal double[]? Extra { get; set; }

    /// <summary>Natural logarithm of the colony's bees over those of the reckoning; null for none.</summary>
    internal double[]? AdultDeviation { get; set; }

    /// <summary>Natural logarithm of the queen's laying over that of the reckoning; null for none.</summary>
    internal double[]? BroodDeviation { get; set; }

    /// <summary>What came and went, by day.</summary>
    internal BeeChange[] Changes { get; set; } = [];

    /// <summary>What left in the last reckoning, by day.</summary>
    internal List<BeesTaken> Taken { get; } = [];

    internal void Run()
    {
        Taken.Clear();
        var lives = _season.Lives;
        int open = lives.WorkerOpenDays;
        int grown = lives.WorkerDays;
        double sealedShare = lives.SealedShare;
        double half = lives.HalfLayingBees;
        double peak = _season.Climate.PeakLaying;
        double summerKept = _season.SummerKept;
        ReadOnlySpan<double> laying = _season.Laying;
        ReadOnlySpan<double> winterBees = _season.WinterBees;
        ReadOnlySpan<double> winterKept = _season.WinterKept;
        ReadOnlySpan<double> droneShare = _season.DroneShare;
        var (summer, winter) = Begin();
        int next = 0;
        for (int day = 0; day < Days; day++)
        {
            int yearDay = YearDays[day];
            while (next < Changes.Length && Changes[next].Day == day)
            {
                Change(Changes[next], day, winterBees[yearDay], ref summer, ref winter);
                next++;
            }

            double bees = (summer + winter) * Times(AdultDeviation, day);
            double eggs = peak * laying[yearDay] * (Queen is { } queen ? queen[day] : 1d);
            eggs *= Times(BroodDeviation, day) * bees / (bees + half);
            if (Extra is { } extra && bees > 0d)
                eggs += extra[day];
            double drones = eggs * droneShare[yearDay];
            WorkersLaid[Before + day] = eggs - drones;
            DronesLaid[Before + day] = drones;

            double emerging = sealedShare * WorkersLaid[Before + day - grown];
            double lasting = winterBees[yearDay];
            summer = (summer + (emerging * (1d - lasting))) * summerKept;
            winter = (winter + (emerging * lasting)) * winterKept[yearDay];
            Summer[day] = summer;
            Winter[day] = winter;
        }
    }

    /// <summary>Adult bees at the close of a day, their deviation included.</summary>
    internal double Bees(int day) => (Summer[day] + Winter[day]) * Times(AdultDeviation, day);

    /// <summary>Worker cells sealed on a day.</summary>
    internal double WorkerSealed(int day) => _season.Lives.SealedShare * WorkersLaid[Before + day - _season.Lives.WorkerOpenDays];

    /// <summary>Drone cells sealed on a day.</summary>
    internal double DroneSealed(int day) => _season.Lives.SealedShare * DronesLaid[Before + day - _season.Lives.DroneOpenDays];

    /// <summary>Cells with brood of every age at the close of a day.</summary>
    internal double Brood(int day)
    {
        var lives = _season.Lives;
        return Cells(WorkersLaid, Before + day, lives.WorkerOpenDays, lives.WorkerDays, lives.SealedShare)
            + Cells(DronesLaid, Before + day, lives.DroneOpenDays, lives.DroneDays, lives.SealedShare);
    }

    private static double Times(double[]? deviation, int day) => deviation is null ? 1d : PortableFunctions.Exp(deviation[day]);

    private (double Summer, double Winter) Begin()
    {
        Array.Clear(WorkersLaid);
        Array.Clear(DronesLaid);
        if (FirstBees is { } bees)
            return (0d, bees);
        if (StartsEmpty)
            return (0d, 0d);
        int today = YearDays[0];
        for (int back = 1; back <= Before; back++)
        {
            int day = (today - back + SeasonWindow.YearDays) % SeasonWindow.YearDays;
            WorkersLaid[Before - back] = _season.NaturalWorkersLaid[day];
            DronesLaid[Before - back] = _season.NaturalDronesLaid[day];
        }

        int yesterday = (today + SeasonWindow.YearDays - 1) % SeasonWindow.YearDays;
        return (_season.NaturalSummer[yesterday], _season.NaturalWinter[yesterday]);
    }

    private static double Cells(double[] laid, int at, int open, int grown, double sealedShare)
    {
        double cells = 0d;
        for (int age = 0; age < grown && age <= at; age++)
            cells += (age < open ? 1d : sealedShare) * laid[at - age];
        return cells;
    }

    private void Change(in BeeChange change, int day, double lasting, ref double summer, ref double winter)
    {
        double bees = (summer + winter) * Times(AdultDeviation, day);
        double beesLeft = change.BeesLeft;
        if (change.BeesGone > 0d)
            beesLeft = bees > 0d ? Math.Max(1d - (change.BeesGone / bees), BeeChange.LeastLeft) : 1d;
        double workerLeft = change.WorkerBroodLeft;
        double droneLeft = change.DroneBroodLeft;
        if (change.BroodGone > 0d)
        {
            double cells = Brood(day - 1);
            workerLeft = droneLeft = cells > 0d ? Math.Max(1d - (change.BroodGone / cells), BeeChange.LeastLeft) : 1d;
        }

        if (!change.Begins && (beesLeft < 1d || workerLeft < 1d || droneLeft < 1d))
            Taken.Add(new(day, 1d - beesLeft, 1d - workerLeft, 1d - droneLeft));
        double come = change.BeesCome / Times(AdultDeviation, day);
        summer = (summer * beesLeft) + (come * (1d - lasting));
        winter = (winter * beesLeft) + (come * lasting);
        var lives = _season.Lives;
        double eachDay = change.BroodCome / (lives.WorkerOpenDays - 1 + (lives.SealedShare * lives.WorkerSealedDays));
        for (int back = 1; back <= Before && back <= Before + day; back++)
        {
            int at = Before + day - back;
            WorkersLaid[at] = (WorkersLaid[at] * workerLeft) + (back < lives.WorkerDays ? eachDay : 0d);
            DronesLaid[at] *= droneLeft;
        }
    }
}
