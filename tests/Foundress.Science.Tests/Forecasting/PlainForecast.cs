using Foundress.Science.Dynamics;
using Foundress.Science.Forecasting;
using Foundress.Science.Tests.Dynamics;

namespace Foundress.Science.Tests.Forecasting;

/// <summary>Plain figures and histories for tests of forecasts: round numbers, not knowledge.</summary>
internal static class PlainForecast
{
    public static readonly ForecastPriors Priors = new()
    {
        StartApiarySpread = 0.9, StartColonySpread = 0.8, ReproductionApiarySpread = 0.18, ReproductionColonySpread = 0.25, InflowMedian = 0.3,
        LateInflowMedian = 2.5, InflowApiarySpread = 0.8, InflowColonySpread = 0.5, DroneApiarySpread = 0.3, DroneColonySpread = 0.4,
        ControlSpread = 0.4, ControlSharedPart = 0.6, DriftPerMonth = 0, DriftMemory = 120, DriftAfterControl = 0, JarSize = 5, StrayShare = 0.001, StrayLoad = 0.03,
    };

    public static ColonyHistory History(params Evidence[] evidence) => Of(200, 0.01, evidence);

    public static ColonyHistory Of(int length, double startLoad, params Evidence[] evidence) =>
        new(PlainColony.Days(PlainColony.Even(length, 20000f, 900f, 36f)), 0, startLoad, evidence, []);

    public static Evidence Jar(int day, int mites, int bees = 300) => Evidence.Jar(day, mites, BeeCount.Counted(bees), 1d, Priors.JarSize);

    public static float[] Loads(ColonyFilter filter, ColonyHistory history)
    {
        float[] loads = new float[filter.Particles];
        MiteRun.Loads(filter.Ensemble, history.Days, loads);
        return loads;
    }
}
