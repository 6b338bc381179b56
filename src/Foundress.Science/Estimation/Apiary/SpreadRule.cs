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

    /// <summary>The rule for an apiary: the highest density over the mean is followed along the spreads.</summary>
    /// <param name="likelihood">The likelihood; bee numbers may be taken as known, only the range depends on it.</param>
    /// <param name="logPrior">ln prior density at a spread and the logarithm of the mean per bee.</param>
    /// <param name="start">A guess of the logarithm of the mean per bee.</param>
    public static SpreadRule Find(ApiaryLikelihood likelihood, Func<double, double, double> logPrior, double start) =>
        Find(
            spread =>
            {
                likelihood.SetSpread(spread);
                double Density(double a) => likelihood.Log(a) + logPrior(spread, a);
                start = MeanPeak.Find(Density, start, 0.25);
                return Density(start);
            },
            Narrowest, ApiaryPrior.WidestSpread);

    /// <summary>The rule for a log density of one peak: looked at on a coarse row of points, then a finer one, and cut where it has dropped far below its top.</summary>
    /// <param name="height">ln density, up to a constant; asked at rising points.</param>
    /// <param name="narrowest">First point of the coarse row, whose steps grow; below it the density hardly changes.</param>
    /// <param name="widest">End of the range.</param>
    public static SpreadRule Find(Func<double, double> height, double narrowest, double widest)
    {
        Span<double> points = stackalloc double[CoarsePoints];
        double ratio = Math.Pow(widest / narrowest, 1d / (CoarsePoints - 1));
        for (int i = 0; i < CoarsePoints; i++)
            points[i] = Math.Min(widest, narrowest * Math.Pow(ratio, i));
        (double low, double high) = Cut(points, height);

        points = points[..FinePoints];
        for (int i = 0; i < FinePoints; i++)
            points[i] = low + ((high - low) * (i + 0.5) / FinePoints);
        (double finerLow, double finerHigh) = Cut(points, height);
        return new(Math.Max(low, finerLow), finerHigh < points[^1] ? finerHigh : high);
    }

    private static (double Low, double High) Cut(ReadOnlySpan<double> points, Func<double, double> height)
    {
        Span<double> heights = stackalloc double[points.Length];
        double top = double.NegativeInfinity;
        for (int i = 0; i < points.Length; i++)
        {
            heights[i] = height(points[i]);
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
