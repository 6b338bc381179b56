namespace Foundress.Science.Numerics;

/// <summary>
/// Poisson and binomial masses written as a deviance around the mean, so that large counts lose no digits
/// (C. Loader 2000, "Fast and accurate computation of binomial probabilities").
/// </summary>
internal static class SaddlePoint
{
    private const double HalfLogTwoPi = 0.91893853320467274178;

    /// <summary>ln Γ(n + 1) less its Stirling form (n + ½) ln n - n + ½ ln 2π; n above 0.</summary>
    public static double StirlingError(double n)
    {
        if (n < 10d)
            return GammaFunctions.LogGamma(n + 1d) - ((n + 0.5) * Math.Log(n)) + n - HalfLogTwoPi;
        return GammaFunctions.StirlingSeries(n);
    }

    /// <summary>Half the Poisson deviance: x ln(x/mean) + mean - x, for x and mean above 0.</summary>
    public static double Deviance(double x, double mean)
    {
        double difference = x - mean;
        if (Math.Abs(difference) >= 0.2 * (x + mean))
            return (x * Math.Log(x / mean)) - difference;

        double ratio = difference / (x + mean);
        double sum = difference * ratio;
        double term = 2d * x * ratio;
        double square = ratio * ratio;
        for (int odd = 3; ; odd += 2)
        {
            term *= square;
            double next = sum + (term / odd);
            if (next == sum)
                return next;
            sum = next;
        }
    }

    /// <summary>mean^x · exp(-mean) / Γ(x + 1) for real x of 0 or more: the Poisson mass, its gamma density twin included.</summary>
    public static double PoissonMass(double x, double mean)
    {
        if (mean == 0d)
            return x == 0d ? 1d : 0d;
        if (x < 10d)
            return Math.Exp((x * Math.Log(mean)) - mean - GammaFunctions.LogGamma(x + 1d));
        return Math.Exp(-StirlingError(x) - Deviance(x, mean)) / Math.Sqrt(2d * Math.PI * x);
    }

    /// <summary>x^a · y^b / B(a, b) with y = 1 - x given apart; a and b above 0, x and y between 0 and 1.</summary>
    public static double BetaKernel(double a, double b, double x, double y)
    {
        if (x <= 0d || y <= 0d)
            return 0d;
        double n = a + b;
        double exponent = StirlingError(n) - StirlingError(a) - StirlingError(b) - Deviance(a, n * x) - Deviance(b, n * y);
        return Math.Exp(exponent) * Math.Sqrt(a * b / (2d * Math.PI * n));
    }
}
