using Foundress.Science.Estimation;
using Foundress.Science.Numerics;

namespace Foundress.Science.Sampling;

/// <summary>How mites in jars are distributed around their level. Each law's likelihood ratio of two levels is linear in the mites. Immutable.</summary>
public abstract record CountLaw
{
    private CountLaw()
    {
    }

    /// <summary>Mites by chance alone: jars of one colony, or colonies all alike.</summary>
    public static CountLaw Poisson { get; } = new PoissonLaw();

    /// <summary>Each bee carries a mite or none; levels at most 100 per 100.</summary>
    public static CountLaw Binomial { get; } = new BinomialLaw();

    /// <summary>Jars of different colonies that differ in level.</summary>
    /// <param name="shape">Shape k of the spread between colonies, above 0 and finite: relative variance 1/k.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="shape"/> is out of its range.</exception>
    public static CountLaw Clumped(double shape) =>
        shape > 0d && double.IsFinite(shape)
            ? new ClumpedLaw(shape)
            : throw new ArgumentOutOfRangeException(nameof(shape), shape, "The shape k of the spread between colonies is a finite number above 0.");

    /// <summary>What each mite adds to the ln likelihood ratio of a high to a low level, and what each jar takes off.</summary>
    internal abstract (double PerMite, double PerJar) Ratio(double low, double high, double bees);

    /// <summary>The chance of a number of mites in a jar at a level above 0.</summary>
    internal abstract double Mass(int mites, double perBee, int bees);

    /// <summary>Refuses a level that the law has no meaning for.</summary>
    internal virtual void Check(MiteLevel level)
    {
    }

    private sealed record PoissonLaw : CountLaw
    {
        internal override (double PerMite, double PerJar) Ratio(double low, double high, double bees) => (Math.Log(high / low), bees * (high - low));

        internal override double Mass(int mites, double perBee, int bees) => SaddlePoint.PoissonMass(mites, bees * perBee);
    }

    private sealed record BinomialLaw : CountLaw
    {
        internal override (double PerMite, double PerJar) Ratio(double low, double high, double bees)
        {
            double without = ElementaryFunctions.Log1P(-low) - ElementaryFunctions.Log1P(-high);
            return (Math.Log(high / low) + without, bees * without);
        }

        internal override double Mass(int mites, double perBee, int bees)
        {
            if (mites > bees)
                return 0d;
            double ways = GammaFunctions.LogGamma(bees + 1d) - GammaFunctions.LogGamma(mites + 1d) - GammaFunctions.LogGamma(bees - mites + 1d);
            return Math.Exp(ways + (mites * Math.Log(perBee)) + ((bees - mites) * ElementaryFunctions.Log1P(-perBee)));
        }

        internal override void Check(MiteLevel level)
        {
            if (level.PerBee >= 1d)
                throw new ArgumentOutOfRangeException(nameof(level), level, "Where each bee carries a mite or none, a level lies below 100 per 100 bees: use another law of counts.");
        }
    }

    private sealed record ClumpedLaw(double Shape) : CountLaw
    {
        internal override (double PerMite, double PerJar) Ratio(double low, double high, double bees)
        {
            double rest = ElementaryFunctions.Log1P(bees * high / Shape) - ElementaryFunctions.Log1P(bees * low / Shape);
            return (Math.Log(high / low) - rest, Shape * rest);
        }

        internal override double Mass(int mites, double perBee, int bees) => Math.Exp(ClumpedCounts.LogMass(mites, bees * perBee, Shape));
    }
}
