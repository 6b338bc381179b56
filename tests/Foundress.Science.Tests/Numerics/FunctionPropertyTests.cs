using CsCheck;
using Foundress.Science.Numerics;

namespace Foundress.Science.Tests.Numerics;

/// <summary>Laws the functions obey at any argument; their values are checked against outside tables in the reference tests.</summary>
public class FunctionPropertyTests
{
    private static readonly Gen<double> Shape = Gen.Double[-3d, 8d].Select(Math.Exp);
    private static readonly Gen<double> Factor = Gen.Double[-2d, 1.5].Select(Math.Exp);
    private static readonly Gen<double> Tail = Gen.Double[-25d, -0.01].Select(Math.Exp);

    [Fact]
    public void Gamma_BothTails_AddUpToOne() =>
        Gen.Select(Shape, Factor).Sample((a, f) => Near(1d, GammaFunctions.Lower(a, a * f) + GammaFunctions.Upper(a, a * f), 4e-15));

    [Fact]
    public void Gamma_Recurrence_Holds() =>
        // DLMF 8.8.5: P(a, x) - P(a + 1, x) is the Poisson mass at a.
        Gen.Select(Shape, Factor).Sample((a, f) => Near(
            Math.Exp((a * Math.Log(a * f)) - (a * f) - GammaFunctions.LogGamma(a + 1d)),
            GammaFunctions.Lower(a, a * f) - GammaFunctions.Lower(a + 1d, a * f), 1e-11));

    [Fact]
    public void GammaInverse_OfATail_GivesItBack() =>
        Gen.Select(Shape, Tail).Sample((a, p) =>
            (GammaFunctions.InverseLower(a, p) < 1e-290 || Near(1d, GammaFunctions.Lower(a, GammaFunctions.InverseLower(a, p)) / p, 1e-12))
            && Near(1d, GammaFunctions.Upper(a, GammaFunctions.InverseUpper(a, p)) / p, 1e-11));

    [Fact]
    public void Beta_Mirror_Holds() =>
        Gen.Select(Shape, Shape, Gen.Double[0.001, 0.999]).Sample((a, b, x) =>
            Near(1d, BetaFunctions.Lower(a, b, x) + BetaFunctions.Upper(a, b, x), 1e-13));

    [Fact]
    public void BetaInverse_OfATail_GivesItBack() =>
        Gen.Select(Gen.Double[0.3, 400d], Gen.Double[0.3, 4000d], Tail).Sample((a, b, p) =>
            Near(1d, BetaFunctions.Lower(a, b, BetaFunctions.InverseLower(a, b, p)) / p, 1e-9));

    [Fact]
    public void Normal_QuantileOfCumulative_GivesItBack() =>
        Gen.Double[-37d, 5d].Sample(z => Near(z, NormalDistribution.Quantile(NormalDistribution.Cumulative(z)), 1e-9 + (1e-14 * Math.Abs(z))));

    [Theory]
    [InlineData(0d, 1d)]
    [InlineData(-2d, 1d)]
    [InlineData(double.NaN, 1d)]
    [InlineData(1d, -1d)]
    [InlineData(1d, double.NaN)]
    public void GammaUpper_OutOfRange_IsRefused(double a, double x) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => GammaFunctions.Upper(a, x));

    [Fact]
    public void Gamma_Ends_AreExact()
    {
        Assert.Equal(0d, GammaFunctions.Lower(2d, 0d));
        Assert.Equal(1d, GammaFunctions.Upper(2d, 0d));
        Assert.Equal(1d, GammaFunctions.Lower(2d, double.PositiveInfinity));
        Assert.Equal(0d, GammaFunctions.Upper(2d, double.PositiveInfinity));
        Assert.Equal(0d, GammaFunctions.InverseLower(2d, 0d));
        Assert.Equal(double.PositiveInfinity, GammaFunctions.InverseUpper(2d, 0d));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(16)]
    [InlineData(101)]
    public void GaussLegendre_Polynomials_AreIntegratedExactly(int count)
    {
        var rule = new GaussLegendre(count);
        for (int degree = 0; degree <= Math.Min(30, (2 * count) - 1); degree++)
        {
            double sum = 0d;
            for (int i = 0; i < count; i++)
                sum += rule.Weights[i] * Math.Pow(rule.Nodes[i], degree);
            Assert.Equal(degree % 2 == 0 ? 2d / (degree + 1) : 0d, sum, 1e-13);
        }
    }

    private static bool Near(double expected, double actual, double tolerance) => Math.Abs(actual - expected) <= tolerance;
}
