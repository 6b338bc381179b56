using System.Globalization;
using Foundress.Science.Dynamics.Bees;

namespace Foundress.Knowledge;

/// <summary>Reads the file of bees and brood.</summary>
internal static class BeeReader
{
    internal static readonly string[] Fields = ["lives", "queens", "frames", "seasons"];

    private static readonly string[] Window = ["opens", "full", "fades", "closes", "text", "source", "status", "doi"];

    internal static BeeFacts Read(Node root, IReadOnlyList<Climate> climates)
    {
        var lives = Lives(root.Child(
            "lives", "workerOpenDays", "workerSealedDays", "droneOpenDays", "droneSealedDays", "sealedShare", "halfLayingBees",
            "springPerDegree", "autumnPerDegree", "metresPerDegree", "mostDegrees", "adultSpread", "broodSpread", "adultMemory", "broodMemory"));
        var queens = Queens(root.Child(
            "queens", "raised", "afterSwarm", "afterHiving", "afterRelease", "caged", "toFull", "toMating", "droneRipening", "swarmShare", "unseenSpread"));
        var frames = Frames(root.Child(
            "frames", "beesPerFrame", "beesLogSpread", "broodCellsPerFrame", "broodLogSpread", "packageBees", "beesPerKilogram", "nucleusFramesOfBees",
            "nucleusFramesOfBrood", "splitShareOfBees", "splitShareOfBrood"));
        var seasons = root.Named(
            "seasons", Season, "id", "degrees", "altitude", "laying", "layingAllYear", "dearth", "peakLaying", "flight", "flightAllYear",
            "summerLife", "winterLoss", "drones", "droneShare");
        foreach (var climate in climates.Where(climate => !seasons.Any(season => season.Id == climate.Id)))
            root.Problem("seasons", $"there is no season for the climate \"{climate.Id}\". Add one with that id.");
        for (var i = 0; i < seasons.Count; i++)
        {
            if (!climates.Any(climate => climate.Id == seasons[i].Id))
                root.Problem(string.Create(CultureInfo.InvariantCulture, $"seasons/{i}/id"), $"there is no climate named \"{seasons[i].Id}\". Use one of: {string.Join(", ", climates.Select(c => c.Id))}.");
        }

        return new(lives, queens, frames, new("bees' season", seasons.DistinctBy(season => season.Id)));
    }

    private static BeeLives Lives(Node n)
    {
        var lives = new BeeLives
        {
            WorkerOpenDays = WholeDays(n, "workerOpenDays"),
            WorkerSealedDays = WholeDays(n, "workerSealedDays"),
            DroneOpenDays = WholeDays(n, "droneOpenDays"),
            DroneSealedDays = WholeDays(n, "droneSealedDays"),
            SealedShare = n.Figure("sealedShare", Units.One).Value,
            HalfLayingBees = n.Figure("halfLayingBees", Units.Bees).Value,
            SpringPerDegree = n.Figure("springPerDegree", Units.DaysPerDegree).Value,
            AutumnPerDegree = n.Figure("autumnPerDegree", Units.DaysPerDegree).Value,
            MetresPerDegree = n.Figure("metresPerDegree", Units.Metres).Value,
            MostDegrees = n.Figure("mostDegrees", Units.Degrees).Value,
            AdultSpread = n.Figure("adultSpread", Units.One).Value,
            BroodSpread = n.Figure("broodSpread", Units.One).Value,
            AdultMemory = n.Figure("adultMemory", Units.Days).Value,
            BroodMemory = n.Figure("broodMemory", Units.Days).Value,
        };
        Check(n, lives.Check);
        return lives;
    }

    private static QueenTimes Queens(Node n)
    {
        var times = new QueenTimes
        {
            Raised = n.Figure("raised", Units.Days).Value,
            AfterSwarm = n.Figure("afterSwarm", Units.Days).Value,
            AfterHiving = n.Figure("afterHiving", Units.Days).Value,
            AfterRelease = n.Figure("afterRelease", Units.Days).Value,
            Caged = n.Figure("caged", Units.Days).Value,
            ToFull = n.Figure("toFull", Units.Days).Value,
            ToMating = n.Figure("toMating", Units.Days).Value,
            DroneRipening = n.Figure("droneRipening", Units.Days).Value,
            SwarmShare = n.Figure("swarmShare", Units.One).Value,
            UnseenSpread = n.Figure("unseenSpread", Units.One).Value,
        };
        Check(n, times.Check);
        return times;
    }

    private static FrameCounts Frames(Node n) => new(
        n.FigureWithin("beesPerFrame", Units.Bees, 100, 10_000),
        n.FigureWithin("beesLogSpread", Units.One, 0.01, 2),
        n.FigureWithin("broodCellsPerFrame", Units.Cells, 100, 20_000),
        n.FigureWithin("broodLogSpread", Units.One, 0.01, 2),
        n.FigureWithin("packageBees", Units.Bees, 100, 100_000),
        n.FigureWithin("beesPerKilogram", Units.Bees, 1000, 20_000),
        n.FigureWithin("nucleusFramesOfBees", Units.Frames, 0, 60),
        n.FigureWithin("nucleusFramesOfBrood", Units.Frames, 0, 60),
        n.FigureWithin("splitShareOfBees", Units.One, 0, 1),
        n.FigureWithin("splitShareOfBrood", Units.One, 0, 1));

    private static ClimateSeason Season(Node n)
    {
        var climate = new BroodClimate
        {
            Degrees = n.Number("degrees"),
            Altitude = n.Number("altitude"),
            Laying = WindowOf(n.Child("laying", Window)),
            LayingAllYear = n.OptionalFigure("layingAllYear", Units.One)?.Value ?? 0,
            Dearth = n.Has("dearth") ? DearthOf(n.Child("dearth", "middle", "length", "depth", "text", "source", "status", "doi")) : default,
            PeakLaying = n.Figure("peakLaying", Units.EggsPerDay).Value,
            Flight = WindowOf(n.Child("flight", Window)),
            FlightAllYear = n.OptionalFigure("flightAllYear", Units.One)?.Value ?? 0,
            SummerLife = n.Figure("summerLife", Units.Days).Value,
            WinterLoss = n.Figure("winterLoss", Units.PercentPerDay).Value / 100,
            Drones = WindowOf(n.Child("drones", Window)),
            DroneShare = n.Figure("droneShare", Units.One).Value,
        };
        Check(n, climate.Check);
        return new(n.Id(), climate);
    }

    private static SeasonWindow WindowOf(Node n)
    {
        var (opens, full, fades, closes) = (n.Number("opens"), n.Number("full"), n.Number("fades"), n.Number("closes"));
        n.Text("text");
        n.Source();
        SeasonWindow window = default;
        Check(n, () => window = new(opens, full, fades, closes));
        return window;
    }

    private static Dearth DearthOf(Node n)
    {
        var (middle, length, depth) = (n.Number("middle"), n.Number("length"), n.Number("depth"));
        n.Text("text");
        n.Source();
        Dearth dearth = default;
        Check(n, () => dearth = new(middle, length, depth));
        return dearth;
    }

    private static int WholeDays(Node n, string name)
    {
        var days = n.Figure(name, Units.Days).Value;
        if (n.Has(name) && !(days is >= 1 and <= 20 && days == Math.Floor(days)))
            n.Problem($"{name}/value", "a whole number of days from 1 to 20 is needed here.");
        return (int)Math.Clamp(days, 1, 20);
    }

    /// <summary>The science says what it can reckon with; here it becomes a problem of the file like any other.</summary>
    private static void Check(Node n, Action check)
    {
        try
        {
            check();
        }
        catch (ArgumentOutOfRangeException refusal)
        {
            n.Problem(string.Empty, refusal.Message.Split(Environment.NewLine)[0]);
        }
    }
}
