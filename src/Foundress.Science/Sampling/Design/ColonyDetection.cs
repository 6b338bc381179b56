using Foundress.Science.Numerics;

namespace Foundress.Science.Sampling;

/// <summary>How often a sample of an apiary catches a colony that is over the line.</summary>
/// <remarks>
/// Exact hypergeometric sums, as in freedom-from-disease sampling (Cannon &amp; Roe 1982; Cameron &amp; Baldock 1998, Prev. Vet. Med.
/// 34:1-17), not their approximations: docs/methods/design.md.
/// </remarks>
public static class ColonyDetection
{
    // 38 of 40 colonies hold a given one with a chance of 0.95, whatever the last binary digit says.
    private const double Hair = 1e-12;

    /// <summary>The chance that at least one of the colonies over the line is sampled and reads over it.</summary>
    /// <param name="sample">Colonies sampled, and colonies there are.</param>
    /// <param name="over">Colonies over the line, 0 to all.</param>
    /// <param name="sensitivity">Chance that a sampled colony over the line also reads over, above 0 and at most 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static Chance ChanceOfSome(SampleSize sample, int over, double sensitivity = 1d)
    {
        if (over < 0 || over > sample.OutOf)
            throw new ArgumentOutOfRangeException(nameof(over), over, $"Of {sample.OutOf} colonies between 0 and {sample.OutOf} can be over the line.");
        if (sensitivity is not (> 0d and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(sensitivity), sensitivity, "The chance that a colony over the line reads over lies above 0 and is at most 1.");
        return Chance.Of(Math.Clamp(1d - None(sample, over, sensitivity), 0d, 1d));
    }

    /// <summary>The fewest colonies to sample for a given chance of catching at least one over the line.</summary>
    /// <param name="colonies">Colonies there are, at least 1.</param>
    /// <param name="over">Colonies over the line, 1 to all: the fewest that must not be missed.</param>
    /// <param name="chance">The wanted chance, for example 0.95.</param>
    /// <param name="sensitivity">Chance that a sampled colony over the line also reads over, above 0 and at most 1.</param>
    /// <returns>None when even sampling all does not give that chance, because a jar can read too low.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static SampleSize? ColoniesFor(int colonies, int over, Chance chance, double sensitivity = 1d)
    {
        if (colonies < 1)
            throw new ArgumentOutOfRangeException(nameof(colonies), colonies, "There is at least one colony.");
        if (over < 1)
            throw new ArgumentOutOfRangeException(nameof(over), over, "At least one colony must be over the line for one to be caught.");
        if (ChanceOfSome(new(colonies, colonies), over, sensitivity).Value < chance.Value - Hair)
            return null;
        int low = 0;
        int high = colonies;
        while (high - low > 1)
        {
            int middle = low + ((high - low) / 2);
            if (ChanceOfSome(new(middle, colonies), over, sensitivity).Value < chance.Value - Hair)
                low = middle;
            else
                high = middle;
        }

        return new(high, colonies);
    }

    // Every colony over the line stays unsampled or, sampled, reads too low: Σ P(x sampled) (1 - sensitivity)^x.
    private static double None(SampleSize sample, int over, double sensitivity)
    {
        int take = sample.Take;
        int under = sample.OutOf - over;
        if (sensitivity == 1d)
        {
            double none = 1d;
            for (int i = 0; i < over; i++)
                none *= Math.Max(0d, sample.OutOf - take - i) / (sample.OutOf - i);
            return none;
        }

        double all = LogWays(sample.OutOf, take);
        double missed = ElementaryFunctions.Log1P(-sensitivity);
        double sum = 0d;
        for (int x = Math.Max(0, take - under); x <= Math.Min(take, over); x++)
            sum += Math.Exp(LogWays(over, x) + LogWays(under, take - x) - all + (x * missed));
        return sum;
    }

    private static double LogWays(int outOf, int take) =>
        GammaFunctions.LogGamma(outOf + 1d) - GammaFunctions.LogGamma(take + 1d) - GammaFunctions.LogGamma(outOf - take + 1d);
}
