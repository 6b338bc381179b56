using System.Globalization;
using Foundress.Science.Numerics;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Foundress.Reference.Tests.Numerics;

/// <summary>
/// Measures the kept library that was considered for the special functions over the same table as ours. The decision and
/// the numbers are in docs/decisions/0002-special-functions.md; this keeps them repeatable.
/// </summary>
public class LibraryComparisonTests
{
    private static readonly ReferenceTable Table = ReferenceTable.Read("special-functions.tsv");

    [Theory]
    [InlineData("gammaLower")]
    [InlineData("gammaUpper")]
    [InlineData("gammaInverseLower")]
    [InlineData("betaLower")]
    [InlineData("betaUpper")]
    [InlineData("betaInverseLower")]
    [InlineData("normalQuantile")]
    public void KeptLibrary_OverTheTable_IsMeasured(string function)
    {
        var errors = new List<(double Error, string Row)>();
        foreach (string[] row in Table.Rows.Where(row => Table.Text(row, "function") == function))
        {
            double actual;
            try { actual = Compute(function, row); } catch (Exception e) when (e is not OutOfMemoryException) { actual = double.NaN; }
            double error = Agreement.Relative(Table.Number(row, "value"), actual);
            errors.Add((double.IsNaN(error) ? double.PositiveInfinity : error, string.Join(' ', row)));
        }
        errors.Sort((a,b) => b.Error.CompareTo(a.Error));
        Console.WriteLine($"{function}: n={errors.Count} >1e-12: {errors.Count(e => e.Error > 1e-12)} >1e-9: {errors.Count(e => e.Error > 1e-9)} >1e-6: {errors.Count(e => e.Error > 1e-6)} worst {errors[0]} median {errors[errors.Count/2].Error}");
        foreach (var e in errors.Take(6)) Console.WriteLine("   " + e);
        Assert.NotEmpty(errors);
    }

    private static double Compute(string function, string[] row)
    {
        double x = Table.Number(row, "x");
        double a = Table.Text(row, "a").Length > 0 ? Table.Number(row, "a") : 0;
        return function switch
        {
            "gammaLower" => SpecialFunctions.GammaLowerRegularized(a, x),
            "gammaUpper" => SpecialFunctions.GammaUpperRegularized(a, x),
            "gammaInverseLower" => SpecialFunctions.GammaLowerRegularizedInv(a, x),
            "betaLower" => SpecialFunctions.BetaRegularized(a, Table.Number(row, "b"), x),
            "betaUpper" => SpecialFunctions.BetaRegularized(Table.Number(row, "b"), a, 1 - x),
            "betaInverseLower" => Beta.InvCDF(a, Table.Number(row, "b"), x),
            _ => Normal.InvCDF(0, 1, x),
        };
    }
}
