using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>Nodes and weights for averages over the spread between colonies: a Gauss-Legendre rule on the range where the posterior is not negligible.</summary>
internal sealed class SpreadRule
{
    /// <summary>Number of nodes.</summary>
    public const int Count = 20;

    private const double Narrowest = 0.02;
    private const double Drop = 18d;
    private const int CoarsePoints = 20;
    private const int FinePoints = 12;
    private static readonly GaussLegendre Rule = new(Count);

    public SpreadRule(double low, double high)
    {
        (Low, High) = (low, high);
        Nodes = new double[Count];
        Weights = new double[Count];
        for (int i = 0; i < Count; i++)
        {
            Nodes[i] = 0.5 * (low + high + ((high - low) * Rule.Nodes[i]));
            Weights[i] = 0.5 * (high - low) * Rule.Weights[i];
        }
    }

    public double Low { get; }

    public double High { get; }

    public double[] Nodes { get; }

    public double[] Weights { get; }

    /// <summary>The Legendre nodes on -1 to 1.</summary>
    public static ReadOnlySpan<double> UnitNodes => Rule.Nodes;

    /// <summary>The Legendre weights on -1 to 1.</summary>
    public static ReadOnlySpan<double> UnitWeights => Rule.Weights;

    /// <summary>
    /// The rule for a likelihood: the highest density over the mean is followed along a coarse row of spreads, then a
    /// finer one, and the range is cut where it has dropped far below its top.
    /// </summary>
    /// <param name="likelihood">The likelihood; bee numbers may be taken as known, only the range depends on it.</param>
    /// <param name="logPrior">ln prior density at a spread and the logarithm of the mean per bee.</param>
    /// <param name="start">A guess of the logarithm of the mean per bee.</param>
    public static SpreadRule Find(ApiaryLikelihood likelihood, Func<double, double, double> logPrior, double start)
    {
        Span<double> points = stackalloc double[CoarsePoints];
        double ratio = Math.Pow(ApiaryPrior.WidestSpread / Narrowest, 1d / (CoarsePoints - 1));
        for (int i = 0; i < CoarsePoints; i++)
            points[i] = Math.Min(ApiaryPrior.WidestSpread, Narrowest * Math.Pow(ratio, i));
        (double low, double high) = Cut(points, likelihood, logPrior, start);

        points = points[..FinePoints];
        for (int i = 0; i < FinePoints; i++)
            points[i] = low + ((high - low) * (i + 0.5) / FinePoints);
        (double finerLow, double finerHigh) = Cut(points, likelihood, logPrior, start);
        return new(Math.Max(low, finerLow), finerHigh < points[^1] ? finerHigh : high);
    }

    private static (double Low, double High) Cut(ReadOnlySpan<double> points, ApiaryLikelihood likelihood, Func<double, double, double> logPrior, double start)
    {
        Span<double> heights = stackalloc double[points.Length];
        double top = double.NegativeInfinity;
        for (int i = 0; i < points.Length; i++)
        {
            double spread = points[i];
            likelihood.SetSpread(spread);
            start = MeanPeak.Find(a => likelihood.Log(a) + logPrior(spread, a), start, 0.25);
            heights[i] = likelihood.Log(start) + logPrior(spread, start);
            top = Math.Max(top, heights[i]);
        }

        int first = 0;
        while (heights[first] < top - Drop)
            first++;
        int last = points.Length - 1;
        while (heights[last] < top - Drop)
            last--;
        return (first == 0 ? 0d : points[first - 1], points[Math.Min(last + 1, points.Length - 1)]);
    }
}
