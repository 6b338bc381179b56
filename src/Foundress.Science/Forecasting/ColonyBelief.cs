using Foundress.Science.Dynamics;
using Foundress.Science.Numerics;

namespace Foundress.Science.Forecasting;

/// <summary>What is believed of a colony's own quantities: independent normal distributions on the log scale.</summary>
/// <remarks>Safe for concurrent use: immutable.</remarks>
public sealed class ColonyBelief
{
    internal ColonyBelief(double[] mean, double[] variance) => (Mean, Variance) = (mean, variance);

    internal double[] Mean { get; }

    internal double[] Variance { get; }

    internal int Count => Mean.Length;

    /// <summary>The belief before anything was counted, in this colony or its apiary.</summary>
    public static ColonyBelief Before(ColonyHistory history, ForecastPriors priors)
    {
        priors.Checked();
        int count = Quantity.FirstControl + history.Days.Controls.Length;
        double[] mean = new double[count];
        double[] variance = new double[count];
        mean[Quantity.Start] = PortableFunctions.Log(history.StartLoad);
        mean[Quantity.Inflow] = PortableFunctions.Log(priors.InflowMedian);
        mean[Quantity.LateInflow] = PortableFunctions.Log(priors.LateInflowMedian);
        for (int quantity = 0; quantity < count; quantity++)
            variance[quantity] = Shared(quantity, priors) + Own(quantity, history.Days, priors);
        return new(mean, variance);
    }

    /// <summary>Variance between apiaries, 0 for what colonies of an apiary do not share.</summary>
    internal static double Shared(int quantity, ForecastPriors priors) => quantity switch
    {
        Quantity.Start => priors.StartApiarySpread * priors.StartApiarySpread,
        Quantity.Reproduction => priors.ReproductionApiarySpread * priors.ReproductionApiarySpread,
        Quantity.Inflow or Quantity.LateInflow => priors.InflowApiarySpread * priors.InflowApiarySpread,
        Quantity.Drones => priors.DroneApiarySpread * priors.DroneApiarySpread,
        Quantity.Adults or Quantity.Brood => 0d,
        _ => priors.ControlSharedPart,
    };

    /// <summary>Variance between colonies of an apiary.</summary>
    internal static double Own(int quantity, ColonyDays days, ForecastPriors priors) => quantity switch
    {
        Quantity.Start => priors.StartColonySpread * priors.StartColonySpread,
        Quantity.Reproduction => priors.ReproductionColonySpread * priors.ReproductionColonySpread,
        Quantity.Inflow or Quantity.LateInflow => priors.InflowColonySpread * priors.InflowColonySpread,
        Quantity.Drones => priors.DroneColonySpread * priors.DroneColonySpread,
        Quantity.Adults => Square(Mid(days.Bees.AdultLogSpread)),
        Quantity.Brood => Square(Mid(days.Bees.BroodLogSpread)),
        _ => 1d - priors.ControlSharedPart,
    };

    private static double Square(double x) => (x * x) + 1e-4;

    private static double Mid(ReadOnlySpan<float> spreads)
    {
        double sum = 0d;
        foreach (float spread in spreads)
            sum += spread;
        return sum / spreads.Length;
    }
}
