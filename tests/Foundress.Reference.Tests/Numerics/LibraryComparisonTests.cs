using System.Globalization;
using Foundress.Science.Numerics;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Foundress.Reference.Tests.Numerics;

/// <summary>
/// Measures the kept library that was considered for the special functions over the same table as ours. The choice and
/// its numbers are in docs/decisions/0002-special-functions.md; a failure here means that the reason for it has gone.
/// </summary>
public class LibraryComparisonTests
{
    private static readonly ReferenceTable Table = ReferenceTable.Read("special-functions.tsv");

    [Theory]
    [InlineData("gammaInverseLower", 10)]
    [InlineData("betaInverseLower", 12)]
    public void KeptLibrary_QuantilesOverTheTable_MissOneInABillion(string function, int rows)
    {
        double[] errors = Errors(function);
        Report(function, errors);
        Assert.True(errors.Count(error => error > 1e-9) >= rows, $"The library now misses 1e-9 in only {errors.Count(error => error > 1e-9)} rows of {function}: read the decision again.");
    }

    [Theory]
    [InlineData("gammaLower")]
    [InlineData("gammaUpper")]
    [InlineData("betaLower")]
    [InlineData("betaUpper")]
    [InlineData("normalQuantile")]
    public void KeptLibrary_TailsOverTheTable_AgreeTo1e9(string function)
    {
        double[] errors = Errors(function);
        Report(function, errors);
        Assert.True(errors[0] <= 1e-9, $"worst relative error of {function}: {errors[0]:E2}");
    }

    [Fact]
    public void KeptLibrary_QuantileOfAFarTail_IsWrongWhereOursIsRight()
    {
        // gamma, shape ½, chance 1e-12: half the square of a normal quantile near 0, π/4 · 1e-24 (mpmath: 7.853981633974482780e-25).
        const double Expected = 7.853981633974482780217e-25;

        Assert.True(Agreement.Relative(Expected, SpecialFunctions.GammaLowerRegularizedInv(0.5, 1e-12)) > 1d);
        Assert.True(Agreement.Relative(Expected, GammaFunctions.InverseLower(0.5, 1e-12)) <= 1e-12);
    }

    private static double[] Errors(string function) =>
        [.. Table.Rows.Where(row => Table.Text(row, "function") == function)
            .Select(row => Agreement.Relative(Table.Number(row, "value"), Compute(function, row)))
            .OrderDescending()];

    private static void Report(string function, double[] errors) =>
        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{function}: {errors.Length} rows, over 1e-12 {errors.Count(e => e > 1e-12)}, over 1e-9 {errors.Count(e => e > 1e-9)}, over 1e-6 {errors.Count(e => e > 1e-6)}, worst {errors[0]:E2}"));

    private static double Compute(string function, string[] row)
    {
        double x = Table.Number(row, "x");
        return function switch
        {
            "gammaLower" => SpecialFunctions.GammaLowerRegularized(A(), x),
            "gammaUpper" => SpecialFunctions.GammaUpperRegularized(A(), x),
            "gammaInverseLower" => SpecialFunctions.GammaLowerRegularizedInv(A(), x),
            "betaLower" => SpecialFunctions.BetaRegularized(A(), B(), x),
            "betaUpper" => SpecialFunctions.BetaRegularized(B(), A(), 1d - x),
            "betaInverseLower" => Beta.InvCDF(A(), B(), x),
            "normalQuantile" => Normal.InvCDF(0d, 1d, x),
            _ => throw new ArgumentOutOfRangeException(nameof(function), function, "The library is not measured for this function."),
        };

        double A() => Table.Number(row, "a");
        double B() => Table.Number(row, "b");
    }
}
