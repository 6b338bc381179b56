using System.Globalization;
using Foundress.Science.Dynamics;
using Foundress.Science.Forecasting;

namespace Foundress.Knowledge;

/// <summary>Reads the file of mite biology.</summary>
internal static class MiteReader
{
    internal static readonly string[] Fields = ["life", "between", "counting", "start"];

    private static readonly string[] LifeFields =
        ["workerOffspring", "droneOffspring", "motherReturn", "emergenceLoss", "workerCrowding", "droneCrowding", "invasionScale", "workerInvasion", "droneInvasion", "beeGrams", "deathWithBrood", "deathBroodless", "loadHazard", "infestedLoss", "halfLayingBees", "weeklySpread", "weeklyMemory", "controlWeeklySpread", "beesWeeklySpread", "lateInflowStart", "lateInflowEnd"];

    private static readonly string[] BetweenFields =
        ["startApiarySpread", "startColonySpread", "reproductionApiarySpread", "reproductionColonySpread", "inflowMedian", "lateInflowMedian", "inflowApiarySpread", "inflowColonySpread", "droneApiarySpread", "droneColonySpread", "controlSpread", "controlSharedPart", "driftPerMonth", "driftMemory", "driftAfterControl"];

    private static readonly string[] CountingFields = ["jarSize", "strayShare", "strayLoad", "fallLogSpread", "cellsSize"];

    internal static MiteFacts Read(Node root)
    {
        var life = Life(root.Child("life", LifeFields));
        var counting = root.Child("counting", CountingFields);
        var priors = Priors(root.Child("between", BetweenFields), counting);
        var fall = counting.FigureWithin("fallLogSpread", Units.One, 0.01, 3);
        var cells = counting.FigureWithin("cellsSize", Units.One, 0.1, 1000);
        var start = root.Child("start", "levels");
        var levels = start.Figures("levels", Units.MitesPer100Bees);
        if (start.Has("levels") && levels.Count != 12)
            start.Problem("levels", string.Create(CultureInfo.InvariantCulture, $"has {levels.Count} levels. Give one for each month from January to December, as in the north."));
        if (levels.Any(level => level.Value <= 0))
            start.Problem("levels", "a usual level is above 0.");
        return new(life, priors, fall, cells, levels);
    }

    private static MiteBiology Life(Node n)
    {
        var life = new MiteBiology
        {
            WorkerOffspring = n.Figure("workerOffspring", Units.One).Value,
            DroneOffspring = n.Figure("droneOffspring", Units.One).Value,
            MotherReturn = n.Figure("motherReturn", Units.One).Value,
            EmergenceLoss = n.Figure("emergenceLoss", Units.One).Value,
            WorkerCrowding = n.Figure("workerCrowding", Units.One).Value,
            DroneCrowding = n.Figure("droneCrowding", Units.One).Value,
            InvasionScale = n.Figure("invasionScale", Units.One).Value,
            WorkerInvasion = n.Figure("workerInvasion", Units.One).Value,
            DroneInvasion = n.Figure("droneInvasion", Units.One).Value,
            BeeGrams = n.Figure("beeGrams", Units.One).Value,
            DeathWithBrood = n.Figure("deathWithBrood", Units.PerDay).Value,
            DeathBroodless = n.Figure("deathBroodless", Units.PerDay).Value,
            LoadHazard = n.Figure("loadHazard", Units.PerDay).Value,
            InfestedLoss = n.Figure("infestedLoss", Units.One).Value,
            HalfLayingBees = n.Figure("halfLayingBees", Units.Bees).Value,
            WeeklySpread = n.Figure("weeklySpread", Units.One).Value,
            WeeklyMemory = n.Figure("weeklyMemory", Units.One).Value,
            ControlWeeklySpread = n.Figure("controlWeeklySpread", Units.One).Value,
            BeesWeeklySpread = n.Figure("beesWeeklySpread", Units.One).Value,
            LateInflowStart = n.Figure("lateInflowStart", Units.Days).Value,
            LateInflowEnd = n.Figure("lateInflowEnd", Units.Days).Value,
        };
        Check(n, () => life.Checked());
        return life;
    }

    private static ForecastPriors Priors(Node n, Node counting)
    {
        var priors = new ForecastPriors
        {
            StartApiarySpread = n.Figure("startApiarySpread", Units.One).Value,
            StartColonySpread = n.Figure("startColonySpread", Units.One).Value,
            ReproductionApiarySpread = n.Figure("reproductionApiarySpread", Units.One).Value,
            ReproductionColonySpread = n.Figure("reproductionColonySpread", Units.One).Value,
            InflowMedian = n.Figure("inflowMedian", Units.MitesPerDay).Value,
            LateInflowMedian = n.Figure("lateInflowMedian", Units.MitesPerDay).Value,
            InflowApiarySpread = n.Figure("inflowApiarySpread", Units.One).Value,
            InflowColonySpread = n.Figure("inflowColonySpread", Units.One).Value,
            DroneApiarySpread = n.Figure("droneApiarySpread", Units.One).Value,
            DroneColonySpread = n.Figure("droneColonySpread", Units.One).Value,
            ControlSpread = n.Figure("controlSpread", Units.One).Value,
            ControlSharedPart = n.Figure("controlSharedPart", Units.One).Value,
            DriftPerMonth = n.Figure("driftPerMonth", Units.One).Value,
            DriftMemory = n.Figure("driftMemory", Units.Days).Value,
            DriftAfterControl = n.Figure("driftAfterControl", Units.One).Value,
            JarSize = counting.Figure("jarSize", Units.One).Value,
            StrayShare = counting.Figure("strayShare", Units.One).Value,
            StrayLoad = counting.Figure("strayLoad", Units.One).Value,
        };
        Check(n, () => priors.Checked());
        return priors;
    }

    // The types of the model know their own ranges; a file that breaks one is refused with the rest of its problems.
    private static void Check(Node n, Action check)
    {
        try
        {
            check();
        }
        catch (ArgumentOutOfRangeException error)
        {
            n.Problem("", error.Message);
        }
    }
}
