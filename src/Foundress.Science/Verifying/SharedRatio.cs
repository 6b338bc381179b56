using System.Numerics;
using Foundress.Science.Numerics;

namespace Foundress.Science.Verifying;

/// <summary>
/// The posterior of the mean share r of the mites that is left in a group of colonies. Given the mites of colony i before and
/// after together, those after are binomial with odds E1·rᵢ/E0: the level before drops out exactly. rᵢ is gamma distributed
/// with mean r and coefficient of variation c; r and c are averaged over fixed grids.
/// </summary>
internal static class SharedRatio
{
    /// <summary>Distance of the nodes of ln r. A plain sum over a bell of this spread errs by 5e-9.</summary>
    public const double Step = 0.05;

    private const int SpreadNodes = 14;
    private const double WidestSpread = 3d;
    private const int LowTail = 240;
    private const int HighTail = 110;
    private const double Nothing = 1e-17;

    public static GridLaw Of(IReadOnlyList<PairCounts> pairs, EfficacyPrior prior)
    {
        double before = 0.5;
        double after = 0.5;
        double exposureBefore = 0d;
        double exposureAfter = 0d;
        foreach (PairCounts pair in pairs)
        {
            before += pair.MitesBefore;
            after += pair.MitesAfter;
            exposureBefore += pair.ExposureBefore;
            exposureAfter += pair.ExposureAfter;
        }

        // Nodes lie at whole multiples of the step, so that two laws can be set against each other.
        double centre = Step * Math.Round(Math.Log(after / exposureAfter / (before / exposureBefore)) / Step);
        // The posterior falls off like exp((mites after + ½) ln r) below and like exp(-(mites before + ½) ln r) above.
        int below = after < 1d ? 480 : after < 2d ? 200 : 120;
        int above = before < 4d ? 160 : 100;
        double first = centre - (below * Step);
        int ratios = below + above + 1;
        double lowest = first - (LowTail * Step);
        (double[] Likelihood, int Times)[] likelihoods =
            [.. pairs.Where(p => p.MitesBefore + p.MitesAfter > 0d).GroupBy(p => p).Select(same => (Likelihood(same.Key, lowest, ratios + LowTail + HighTail), same.Count()))];

        double[] density = new double[ratios];
        double highest = double.NegativeInfinity;
        var layers = new List<double[]>();
        for (int s = 0; s < SpreadNodes; s++)
        {
            double spread = prior.SpreadScale == 0d ? 0d : WidestSpread * Math.Pow((s + 0.5) / SpreadNodes, 1.5);
            double width = WidestSpread * (Math.Pow((s + 1d) / SpreadNodes, 1.5) - Math.Pow((double)s / SpreadNodes, 1.5));
            double logWeight = prior.SpreadScale == 0d ? 0d : Math.Log(width) - (0.5 * spread * spread / (prior.SpreadScale * prior.SpreadScale));
            double[] layer = Layer(likelihoods, spread, first, ratios, logWeight);
            layers.Add(layer);
            highest = Math.Max(highest, layer.Max());
            if (prior.SpreadScale == 0d)
                break;
        }

        foreach (double[] layer in layers)
        {
            for (int i = 0; i < ratios; i++)
                density[i] += Math.Exp(layer[i] - highest);
        }

        return new(first, Step, density);
    }

    // ln of prior and likelihood at each ratio for one spread between colonies.
    private static double[] Layer((double[] Likelihood, int Times)[] likelihoods, double spread, double first, int ratios, double logWeight)
    {
        double[] logs = new double[ratios];
        (int start, double[] kernel) = spread < 2d * Step ? (LowTail, [1d]) : Kernel(spread);
        for (int i = 0; i < ratios; i++)
        {
            // With equal bees before and after, Jeffreys' prior of the binomial share: a beta variable with ½ and ½ as odds.
            double half = 0.5 * (first + (i * Step));
            logs[i] = logWeight - Math.Log(2d * Math.Cosh(half));
        }

        foreach ((double[] likelihood, int times) in likelihoods)
        {
            for (int i = 0; i < ratios; i++)
                logs[i] += times * Math.Log(Math.Max(Dot(kernel, likelihood.AsSpan(i + start, kernel.Length)), 1e-300));
        }

        return logs;
    }

    private static double Dot(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        Vector<double> sums = Vector<double>.Zero;
        int k = 0;
        for (; k <= left.Length - Vector<double>.Count; k += Vector<double>.Count)
            sums += new Vector<double>(left[k..]) * new Vector<double>(right[k..]);
        double sum = Vector.Sum(sums);
        for (; k < left.Length; k++)
            sum += left[k] * right[k];
        return sum;
    }

    // Weights of ln(rᵢ / r) from LowTail steps below to HighTail above, less ends that weigh nothing; the first takes all that lies lower.
    private static (int Start, double[] Weights) Kernel(double spread)
    {
        double shape = 1d / (spread * spread);
        double constant = (shape * Math.Log(shape)) - GammaFunctions.LogGamma(shape);
        double[] kernel = new double[LowTail + HighTail + 1];
        double total = 0d;
        for (int k = 0; k < kernel.Length; k++)
        {
            double v = (k - LowTail) * Step;
            kernel[k] = Step * Math.Exp(constant + (shape * (v - Math.Exp(v))));
            total += kernel[k];
        }

        double lower = GammaFunctions.Lower(shape, shape * Math.Exp((-LowTail - 0.5) * Step));
        kernel[0] += lower;
        total += lower;
        for (int k = 0; k < kernel.Length; k++)
            kernel[k] /= total;
        int start = 0;
        int end = kernel.Length;
        while (kernel[start] < Nothing)
            start++;
        while (kernel[end - 1] < Nothing)
            end--;
        return (start, kernel[start..end]);
    }

    // The chance of the split of the mites of one colony at each ln rᵢ, over its highest value; uncertain bees averaged over.
    private static double[] Likelihood(PairCounts pair, double lowest, int count)
    {
        double offset = Math.Log(pair.ExposureAfter / pair.ExposureBefore);
        int reach = pair.LogSpread > 0d ? (int)Math.Ceiling(6d * pair.LogSpread / Step) : 0;
        double[] plain = new double[count + (2 * reach)];
        double best = double.NegativeInfinity;
        for (int k = 0; k < plain.Length; k++)
        {
            double logOdds = lowest + ((k - reach) * Step) + offset;
            plain[k] = (-pair.MitesAfter * Softplus(-logOdds)) - (pair.MitesBefore * Softplus(logOdds));
            best = Math.Max(best, plain[k]);
        }

        for (int k = 0; k < plain.Length; k++)
            plain[k] = Math.Exp(plain[k] - best);
        if (reach == 0)
            return plain;
        double[] weights = new double[(2 * reach) + 1];
        double total = 0d;
        for (int j = 0; j < weights.Length; j++)
        {
            double z = (j - reach) * Step / pair.LogSpread;
            weights[j] = Math.Exp(-0.5 * z * z);
            total += weights[j];
        }

        double[] smooth = new double[count];
        for (int k = 0; k < count; k++)
        {
            for (int j = 0; j < weights.Length; j++)
                smooth[k] += weights[j] * plain[k + j];
            smooth[k] /= total;
        }

        return smooth;
    }

    private static double Softplus(double x) => x > 0d ? x + Math.Log(1d + Math.Exp(-x)) : Math.Log(1d + Math.Exp(x));
}
