namespace Foundress.Science.Numerics;

/// <summary>The standard normal distribution.</summary>
public static class NormalDistribution
{
    /// <summary>The chance that a standard normal variable is at most z; both tails keep their digits.</summary>
    /// <remarks>Through the incomplete gamma function of shape ½: DLMF 7.11.2.</remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="z"/> is not a number.</exception>
    public static double Cumulative(double z)
    {
        if (double.IsNaN(z))
            throw new ArgumentOutOfRangeException(nameof(z), z, "The point of a normal distribution must be a number.");
        double square = 0.5 * z * z;
        return z < 0d ? 0.5 * GammaFunctions.Upper(0.5, square) : 0.5 + (0.5 * GammaFunctions.Lower(0.5, square));
    }

    /// <summary>The z with <see cref="Cumulative"/>(z) = p; infinite at 0 and 1.</summary>
    /// <remarks>M. J. Wichura 1988, algorithm AS 241, Applied Statistics 37:477-484 (its PPND16, about 16 digits).</remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is not between 0 and 1.</exception>
    public static double Quantile(double p)
    {
        if (p is not (>= 0d and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(p), p, "A probability lies between 0 and 1.");
        if (p == 0d)
            return double.NegativeInfinity;
        if (p == 1d)
            return double.PositiveInfinity;

        double q = p - 0.5;
        if (Math.Abs(q) <= 0.425)
        {
            double centre = 0.180625 - (q * q);
            return q * Ratio(centre, CentreTop, CentreBottom);
        }

        double r = Math.Sqrt(-Math.Log(q < 0d ? p : 1d - p));
        double size = r <= 5d ? Ratio(r - 1.6, TailTop, TailBottom) : Ratio(r - 5d, FarTop, FarBottom);
        return q < 0d ? -size : size;
    }

    private static ReadOnlySpan<double> CentreTop =>
    [
        3.3871328727963666080, 1.3314166789178437745e+2, 1.9715909503065514427e+3, 1.3731693765509461125e+4,
        4.5921953931549871457e+4, 6.7265770927008700853e+4, 3.3430575583588128105e+4, 2.5090809287301226727e+3,
    ];

    private static ReadOnlySpan<double> CentreBottom =>
    [
        1d, 4.2313330701600911252e+1, 6.8718700749205790830e+2, 5.3941960214247511077e+3,
        2.1213794301586595867e+4, 3.9307895800092710610e+4, 2.8729085735721942674e+4, 5.2264952788528545610e+3,
    ];

    private static ReadOnlySpan<double> TailTop =>
    [
        1.42343711074968357734, 4.63033784615654529590, 5.76949722146069140550, 3.64784832476320460504,
        1.27045825245236838258, 2.41780725177450611770e-1, 2.27238449892691845833e-2, 7.74545014278341407640e-4,
    ];

    private static ReadOnlySpan<double> TailBottom =>
    [
        1d, 2.05319162663775882187, 1.67638483018380384940, 6.89767334985100004550e-1,
        1.48103976427480074590e-1, 1.51986665636164571966e-2, 5.47593808499534494600e-4, 1.05075007164441684324e-9,
    ];

    private static ReadOnlySpan<double> FarTop =>
    [
        6.65790464350110377720, 5.46378491116411436990, 1.78482653991729133580, 2.96560571828504891230e-1,
        2.65321895265761230930e-2, 1.24266094738807843860e-3, 2.71155556874348757815e-5, 2.01033439929228813265e-7,
    ];

    private static ReadOnlySpan<double> FarBottom =>
    [
        1d, 5.99832206555887937690e-1, 1.36929880922735805310e-1, 1.48753612908506148525e-2,
        7.86869131145613259100e-4, 1.84631831751005468180e-5, 1.42151175831644588870e-7, 2.04426310338993978564e-15,
    ];

    private static double Ratio(double x, ReadOnlySpan<double> top, ReadOnlySpan<double> bottom)
    {
        double numerator = 0d;
        double denominator = 0d;
        for (int i = top.Length - 1; i >= 0; i--)
        {
            numerator = (numerator * x) + top[i];
            denominator = (denominator * x) + bottom[i];
        }

        return numerator / denominator;
    }
}
