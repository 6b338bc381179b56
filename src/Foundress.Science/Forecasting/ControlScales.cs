using Foundress.Science.Dynamics;
using Foundress.Science.Numerics;

namespace Foundress.Science.Forecasting;

/// <summary>From a standard normal number to the factor on a control's kill rate.</summary>
/// <remarks>The lowest part of the distribution are the failures; the rest is lognormal about 1. One number for both lets colonies of an apiary share failure.</remarks>
internal static class ControlScales
{
    internal static void Fill(ControlEffect control, double useSpread, ReadOnlySpan<float> normal, Span<float> scales)
    {
        bool fails = control.FailureShare > 0d;
        double limit = fails ? NormalDistribution.Quantile(control.FailureShare) : double.NegativeInfinity;
        // The mean of a normal number above the limit, taken off so that uses that do not fail centre on the usual effect.
        double centre = fails ? 0.3989422804014327 * PortableFunctions.Exp(-0.5 * limit * limit) / (1d - control.FailureShare) : 0d;
        double spread = Math.Sqrt((control.LogSpread * control.LogSpread) + (useSpread * useSpread));
        for (int i = 0; i < normal.Length; i++)
        {
            double scale = PortableFunctions.Exp(spread * (normal[i] < limit ? 0d : normal[i] - centre));
            scales[i] = (float)(normal[i] < limit ? control.FailureFactor * scale : scale);
        }
    }
}
