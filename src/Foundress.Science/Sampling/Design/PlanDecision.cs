using Foundress.Science.Numerics;

namespace Foundress.Science.Sampling;

/// <summary>
/// How often a plan puts an apiary on the wrong side of the line, when the apiary is judged over as soon as all mites over all
/// bees exceed the line.
/// </summary>
/// <remarks>Formulas, sources and limits: docs/methods/design.md.</remarks>
public static class PlanDecision
{
    // Beyond this shape the negative binomial is the Poisson distribution to all digits that matter.
    private const double PoissonShape = 1e8;

    /// <summary>The chance that the apiary is judged over the line.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="level">The apiary's true average level.</param>
    /// <param name="shape">Shape k of the spread between colonies, above 0. Infinite for colonies all alike.</param>
    /// <param name="line">The line.</param>
    /// <remarks>
    /// Mites of c colonies are negative binomial with shape c k (a sum of c gamma-Poisson counts). In a finite apiary the shape is c k / f,
    /// f being the share of colonies not sampled, which gives the right variance; it is exact for a large apiary and, as Poisson,
    /// for one sampled whole.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="shape"/> is out of its range.</exception>
    public static Chance ChanceJudgedOver(SamplingPlan plan, MiteLevel level, double shape, MiteLevel line)
    {
        SamplingPlan.CheckShape(shape);
        double bees = plan.BeesPerColony * plan.Sample.Take;
        double mean = bees * level.PerBee;
        if (mean == 0d)
            return Chance.Of(0d);

        // A hair is added: 3 per 100 of 2400 bees is 72, whatever the last binary digit says.
        double most = Math.Floor((bees * line.PerBee) + 1e-9);
        double pooled = plan.Unsampled == 0d ? double.PositiveInfinity : plan.Sample.Take * shape / plan.Unsampled;
        double over = pooled > PoissonShape
            ? GammaFunctions.Lower(most + 1d, mean)
            : BetaFunctions.Lower(most + 1d, pooled, mean / (mean + pooled));
        return Chance.Of(Math.Clamp(over, 0d, 1d));
    }

    /// <summary>The chance that the apiary is judged on the wrong side.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="level">The apiary's true average level; one on the line itself counts as not over.</param>
    /// <param name="shape">Shape k of the spread between colonies, above 0.</param>
    /// <param name="line">The line.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="shape"/> is out of its range.</exception>
    public static Chance ChanceOfError(SamplingPlan plan, MiteLevel level, double shape, MiteLevel line)
    {
        Chance over = ChanceJudgedOver(plan, level, shape, line);
        return level > line ? over.Complement : over;
    }
}
