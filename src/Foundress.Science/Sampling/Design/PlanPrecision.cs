namespace Foundress.Science.Sampling;

/// <summary>How precisely a plan finds the average level of an apiary.</summary>
/// <remarks>Formulas, sources and limits: docs/methods/design.md.</remarks>
public static class PlanPrecision
{
    /// <summary>
    /// Standard error of the apiary's average over that average: sqrt((1/m + f/k) / c) with m mites expected in a colony's
    /// jars, c colonies sampled, k the shape between colonies and f the share of colonies not sampled.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="level">The average level expected, above 0.</param>
    /// <param name="shape">Shape k of the spread between colonies, above 0: relative variance 1/k. Infinite for colonies all alike.</param>
    /// <remarks>
    /// The finite-population correction f falls on the spread between colonies only: with every colony sampled the chance
    /// of what was scooped remains.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static double RelativeError(SamplingPlan plan, MiteLevel level, double shape)
    {
        SamplingPlan.CheckShape(shape);
        if (!(level.PerBee > 0d))
            throw new ArgumentOutOfRangeException(nameof(level), level, "A relative error needs an expected level above 0.");
        double mites = plan.BeesPerColony * level.PerBee;
        return Math.Sqrt(((1d / mites) + (plan.Unsampled / shape)) / plan.Sample.Take);
    }

    /// <summary>The fewest colonies that reach a relative error.</summary>
    /// <param name="relativeError">Standard error over average, above 0, for example 0.25.</param>
    /// <param name="colonies">Colonies there are, at least 1.</param>
    /// <param name="jarsPerColony">Jars taken in each sampled colony, at least 1.</param>
    /// <param name="beesPerJar">Bees in a jar, at least 1.</param>
    /// <param name="level">The average level expected, above 0.</param>
    /// <param name="shape">Shape k of the spread between colonies, above 0.</param>
    /// <returns>None when even all colonies do not reach it: then more jars each would be needed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static SampleSize? ColoniesFor(double relativeError, int colonies, int jarsPerColony, int beesPerJar, MiteLevel level, double shape)
    {
        if (!(relativeError > 0d))
            throw new ArgumentOutOfRangeException(nameof(relativeError), relativeError, "The wanted relative error lies above 0, for example 0.25.");
        if (colonies < 1)
            throw new ArgumentOutOfRangeException(nameof(colonies), colonies, "There is at least one colony.");

        // The error falls with every further colony, so the fewest are found by halving.
        if (Error(colonies) > relativeError)
            return null;
        int low = 0;
        int high = colonies;
        while (high - low > 1)
        {
            int middle = low + ((high - low) / 2);
            if (Error(middle) > relativeError)
                low = middle;
            else
                high = middle;
        }

        return new(high, colonies);

        double Error(int take) => RelativeError(new(new(take, colonies), jarsPerColony, beesPerJar), level, shape);
    }

    /// <summary>Every way to spread a fixed number of jars evenly over colonies: few colonies with many jars to many colonies with one.</summary>
    /// <param name="jars">Jars in all, at least 1.</param>
    /// <param name="colonies">Colonies there are, at least 1.</param>
    /// <param name="beesPerJar">Bees in a jar, at least 1.</param>
    /// <param name="level">The average level expected, above 0.</param>
    /// <param name="shape">Shape k of the spread between colonies, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static IReadOnlyList<JarSplit> Splits(int jars, int colonies, int beesPerJar, MiteLevel level, double shape)
    {
        if (jars < 1)
            throw new ArgumentOutOfRangeException(nameof(jars), jars, "At least one jar is taken.");
        if (colonies < 1)
            throw new ArgumentOutOfRangeException(nameof(colonies), colonies, "There is at least one colony.");
        var splits = new List<JarSplit>();
        for (int take = 1; take <= Math.Min(jars, colonies); take++)
        {
            if (jars % take != 0)
                continue;
            SamplingPlan plan = new(new(take, colonies), jars / take, beesPerJar);
            splits.Add(new(plan, RelativeError(plan, level, shape)));
        }

        return splits;
    }
}
