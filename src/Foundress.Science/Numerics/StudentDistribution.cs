namespace Foundress.Science.Numerics;

/// <summary>Student's t distribution with real degrees of freedom.</summary>
public static class StudentDistribution
{
    /// <summary>The chance that t is at most a point; both tails keep their digits.</summary>
    /// <param name="t">The point; a number.</param>
    /// <param name="freedom">Degrees of freedom, above 0.</param>
    /// <remarks>Half an incomplete beta function: Abramowitz &amp; Stegun 1964, 26.7.1.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static double Cumulative(double t, double freedom)
    {
        if (double.IsNaN(t))
            throw new ArgumentOutOfRangeException(nameof(t), t, "The point of a t distribution must be a number.");
        CheckFreedom(freedom);
        double square = t * t;

        // Of the two equal forms, the one whose argument is the smaller keeps its digits.
        double tail = 0.5 * (square < freedom
            ? BetaFunctions.Upper(0.5, 0.5 * freedom, square / (freedom + square))
            : BetaFunctions.Lower(0.5 * freedom, 0.5, freedom / (freedom + square)));
        return t < 0d ? tail : 1d - tail;
    }

    /// <summary>The t with <see cref="Cumulative"/>(t) = p.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <param name="freedom">Degrees of freedom, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static double Quantile(double p, double freedom)
    {
        if (p is not (> 0d and < 1d))
            throw new ArgumentOutOfRangeException(nameof(p), p, "A quantile is asked for a chance above 0 and below 1.");
        CheckFreedom(freedom);
        double tail = p < 0.5 ? p : 1d - p;
        double size;
        if (tail < 0.25)
        {
            double x = BetaFunctions.InverseLower(0.5 * freedom, 0.5, 2d * tail);
            size = Math.Sqrt(freedom * (1d - x) / x);
        }
        else
        {
            double x = BetaFunctions.InverseUpper(0.5, 0.5 * freedom, 2d * tail);
            size = Math.Sqrt(freedom * x / (1d - x));
        }

        return p < 0.5 ? -size : size;
    }

    private static void CheckFreedom(double freedom)
    {
        if (!(freedom > 0d) || !double.IsFinite(freedom))
            throw new ArgumentOutOfRangeException(nameof(freedom), freedom, "Degrees of freedom are a finite number above 0.");
    }
}
