using Foundress.Science.Numerics;

namespace Foundress.Science.Forecasting;

/// <summary>
/// What the model leaves out: the farther a level is foretold behind the last count, the farther it strays from every course
/// the model knows.
/// </summary>
/// <remarks>
/// A lognormal factor with a spread that grows with the root of time, one for each particle for all days, in the manner of
/// Kennedy &amp; O'Hagan 2001 (J R Stat Soc B 63:425-464): a model that is tuned but wrong must say so. It strays
/// farther after a control: trials of one agent differ from each other as wholes.
/// </remarks>
internal static class ModelDrift
{
    private const double Month = 30d;

    // After so many days a control has shown what it does.
    private const double ControlDays = 14d;

    /// <summary>Draws the particles' drifts: standard normal numbers, the same for every course that goes on from one run.</summary>
    internal static void Draw(Span<float> drifts, uint seed)
    {
        SeededGenerator generator = SeededGenerator.ForPart(seed, "what the model leaves out");
        for (int i = 0; i < drifts.Length; i++)
            drifts[i] = (float)generator.NextNormal();
    }

    /// <summary>Lets the loads of a day stray.</summary>
    /// <param name="loads">One load a particle.</param>
    /// <param name="drifts">One drift a particle.</param>
    /// <param name="days">Days behind the last count; at 0 or fewer nothing strays.</param>
    /// <param name="controlled">How many of these days a control was at work or had been, 0 or more.</param>
    /// <param name="priors">How far it strays.</param>
    internal static void Apply(Span<float> loads, ReadOnlySpan<float> drifts, int days, int controlled, ForecastPriors priors)
    {
        if (days <= 0)
            return;
        double time = priors.DriftPerMonth * priors.DriftPerMonth * days / Month;
        double control = priors.DriftAfterControl * priors.DriftAfterControl * Math.Min(1d, controlled / ControlDays);
        double spread = Math.Sqrt(time + control);
        if (spread == 0d)
            return;

        // What is not known of a control must not raise the mean course.
        double lowered = -control / 2d;
        for (int i = 0; i < drifts.Length; i++)
            loads[i] *= (float)PortableFunctions.Exp((spread * drifts[i]) + lowered);
    }
}
