using Foundress.Science.Numerics;

namespace Foundress.Science.Forecasting;

/// <summary>What a jar of bees will show: the chance of every count of mites.</summary>
/// <remarks>The mean over the particles of their negative binomial distributions, with the small share of counts that say nothing. Immutable; safe for concurrent use.</remarks>
public sealed class JarPrediction
{
    private const double Rest = 1e-7;

    private readonly double[] _upTo;
    private readonly double _bees;

    private JarPrediction(double[] upTo, double bees) => (_upTo, _bees) = (upTo, bees);

    /// <summary>The prediction from particles of equal weight.</summary>
    /// <param name="loads">Mites per adult bee of each particle.</param>
    /// <param name="bees">The bees that will be in the jar.</param>
    /// <param name="recovery">Share of the mites that the method brings off, above 0 to 1.</param>
    /// <param name="priors">The figures of counting.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range, or there are no particles.</exception>
    public static JarPrediction Of(ReadOnlySpan<float> loads, BeeCount bees, double recovery, ForecastPriors priors)
    {
        if (loads.IsEmpty)
            throw new ArgumentOutOfRangeException(nameof(loads), 0, "A prediction needs particles.");
        Evidence jar = Evidence.Jar(0, 0, bees, recovery, priors.Checked().JarSize);
        List<(double Load, int Particles)> alike = Alike(loads);
        double greatest = Math.Max(alike[^1].Load, priors.StrayLoad) * jar.Base;
        int most = (int)Math.Min(20_000d, 60d + (greatest * (3d + (12d / Math.Sqrt(Math.Min(jar.Size, CountLikelihood.StraySize * 4d))))));
        double[] chances = new double[most + 1];
        double[] steps = Steps(jar.Size, chances.Length);
        double each = (1d - priors.StrayShare) / loads.Length;
        foreach (var (load, particles) in alike)
            Add(chances, steps, load * jar.Base, jar.Size, each * particles);
        Add(chances, Steps(CountLikelihood.StraySize, chances.Length), jar.Base * priors.StrayLoad, CountLikelihood.StraySize, priors.StrayShare);
        double sum = 0d;
        for (int count = 0; count < chances.Length; count++)
            chances[count] = sum += chances[count];
        for (int count = 0; count < chances.Length; count++)
            chances[count] /= sum;
        return new(chances, bees.Bees);
    }

    /// <summary>The chance of at most so many mites.</summary>
    /// <param name="mites">A count; below 0 the chance is 0.</param>
    public Chance AtMost(int mites) => Chance.Of(mites < 0 ? 0d : Math.Min(1d, _upTo[Math.Min(mites, _upTo.Length - 1)]));

    /// <summary>The least count that is reached or stayed below with a chance.</summary>
    /// <param name="chance">0 to 1.</param>
    public int Mites(Chance chance)
    {
        int at = Array.BinarySearch(_upTo, chance.Value);
        if (at < 0)
            return Math.Min(~at, _upTo.Length - 1);
        while (at > 0 && _upTo[at - 1] >= chance.Value)
            at--;
        return at;
    }

    /// <summary>The level such a jar shows with that chance or less: the count spread evenly over the unit behind it, so that levels do not jump.</summary>
    /// <param name="chance">0 to 1.</param>
    public MiteLevel Level(Chance chance)
    {
        int mites = Mites(chance);
        double below = mites == 0 ? 0d : _upTo[mites - 1];
        double step = _upTo[mites] - below;
        double part = step > 0d ? Math.Clamp((chance.Value - below) / step, 0d, 1d) : 0.5;
        return MiteLevel.Per100(100d * Math.Max(0d, mites - 0.5 + part) / _bees);
    }

    // Loads in rising order, those nearer to each other than a twenty-fifth taken together at their mean: beside the scatter of jars that is nothing.
    private static List<(double Load, int Particles)> Alike(ReadOnlySpan<float> loads)
    {
        const float Near = 1.04f;
        float[] sorted = loads.ToArray();
        Array.Sort(sorted);
        List<(double, int)> alike = [];
        for (int first = 0, next; first < sorted.Length; first = next)
        {
            double sum = 0d;
            for (next = first; next < sorted.Length && sorted[next] <= sorted[first] * Near; next++)
                sum += sorted[next];
            alike.Add((sum / (next - first), next - first));
        }

        return alike;
    }

    // From one count's chance to the next, but for the share: the same for every load.
    private static double[] Steps(double size, int counts)
    {
        double[] steps = new double[counts];
        for (int count = 0; count < counts; count++)
            steps[count] = (count + size) / (count + 1d);
        return steps;
    }

    private static void Add(double[] chances, double[] steps, double mean, double size, double weight)
    {
        double share = mean / (size + mean);
        double chance = weight * PortableFunctions.Exp(-size * PortableFunctions.Log(1d + (mean / size)));
        for (int count = 0; count < chances.Length; count++)
        {
            chances[count] += chance;
            chance *= steps[count] * share;
            if (chance < Rest * weight && count > mean)
                return;
        }
    }
}
