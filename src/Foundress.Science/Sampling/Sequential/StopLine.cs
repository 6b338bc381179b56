namespace Foundress.Science.Sampling;

/// <summary>
/// Mites after which sampling may stop because the average is known precisely enough: standard error over average at
/// most a wanted precision. Says nothing of any line.
/// </summary>
/// <remarks>Formulas, sources and limits: docs/methods/sequential.md.</remarks>
public static class StopLine
{
    /// <summary>Mites of all jars so far for which to stop, when the variance between jars is a · average^b (Taylor's power law).</summary>
    /// <param name="precision">Standard error over average, above 0 and at most 1, for example 0.25.</param>
    /// <param name="a">Taylor's a, above 0: 1 for chance alone.</param>
    /// <param name="b">Taylor's b, above 0 and below 2: 1 for chance alone.</param>
    /// <param name="jars">Jars taken, at least 1.</param>
    /// <remarks>R. H. Green 1970, Res. Popul. Ecol. 12:249-251; L. R. Taylor 1961, Nature 189:732-735.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static double Taylor(double precision, double a, double b, int jars)
    {
        Check(precision, jars);
        if (!(a > 0d) || !double.IsFinite(a))
            throw new ArgumentOutOfRangeException(nameof(a), a, "Taylor's a is a finite number above 0.");
        if (b is not (> 0d and < 2d))
            throw new ArgumentOutOfRangeException(nameof(b), b, "Taylor's b lies above 0 and below 2: at 2 the number of mites no longer decides.");
        return Math.Exp((Math.Log(precision * precision / a) + ((b - 1d) * Math.Log(jars))) / (b - 2d));
    }

    /// <summary>Mites of all jars so far for which to stop, when chance alone spreads them: 1 / precision², whatever the jars.</summary>
    /// <param name="precision">Standard error over average, above 0 and at most 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="precision"/> is out of its range.</exception>
    public static double Poisson(double precision)
    {
        Check(precision, 1);
        return 1d / (precision * precision);
    }

    /// <summary>Mites of all jars so far for which to stop, when each jar comes from another colony and colonies differ with shape k.</summary>
    /// <param name="precision">Standard error over average, above 0 and at most 1.</param>
    /// <param name="shape">Shape k of the spread between colonies, above 0 and finite.</param>
    /// <param name="jars">Jars taken, one to a colony, at least 1.</param>
    /// <returns>None while no number of mites would do: colonies differ too much, more of them must be sampled.</returns>
    /// <remarks>1 / (precision² - 1 / (k jars)): E. Kuno 1969, Res. Popul. Ecol. 11:127-136.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static double? Clumped(double precision, double shape, int jars)
    {
        Check(precision, jars);
        if (!(shape > 0d) || !double.IsFinite(shape))
            throw new ArgumentOutOfRangeException(nameof(shape), shape, "The shape k of the spread between colonies is a finite number above 0.");
        double left = (precision * precision) - (1d / (shape * jars));
        return left > 0d ? 1d / left : null;
    }

    private static void Check(double precision, int jars)
    {
        if (precision is not (> 0d and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(precision), precision, "The wanted precision lies above 0 and is at most 1, for example 0.25.");
        if (jars < 1)
            throw new ArgumentOutOfRangeException(nameof(jars), jars, "At least one jar was taken.");
    }
}
