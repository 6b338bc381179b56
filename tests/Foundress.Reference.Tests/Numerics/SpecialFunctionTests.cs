using Foundress.Science.Numerics;

namespace Foundress.Reference.Tests.Numerics;

/// <summary>Against mpmath at 60 digits or more (Tables/special-functions.tsv, made by Tables/make-special-functions.py).</summary>
public class SpecialFunctionTests
{
    private static readonly ReferenceTable Table = ReferenceTable.Read("special-functions.tsv");

    [Theory]
    [InlineData("logGamma", 20)]
    [InlineData("gammaLower", 200)]
    [InlineData("gammaUpper", 200)]
    [InlineData("gammaInverseLower", 90)]
    [InlineData("gammaInverseUpper", 90)]
    [InlineData("betaLower", 150)]
    [InlineData("betaUpper", 150)]
    [InlineData("betaInverseLower", 90)]
    [InlineData("normal", 14)]
    [InlineData("normalQuantile", 15)]
    public void Functions_EveryRowOfTheTable_AgreeTo1e12(string function, int rows)
    {
        var agreement = new Agreement(1e-12);
        foreach (string[] row in Table.Rows.Where(row => Table.Text(row, "function") == function))
            agreement.Check(Table.Number(row, "value"), Compute(function, row), string.Join(' ', row[..4]));
        agreement.AssertAll(rows);
    }

    private static double Compute(string function, string[] row)
    {
        double x = Table.Number(row, "x");
        return function switch
        {
            "logGamma" => GammaFunctions.LogGamma(x),
            "gammaLower" => GammaFunctions.Lower(A(), x),
            "gammaUpper" => GammaFunctions.Upper(A(), x),
            "gammaInverseLower" => GammaFunctions.InverseLower(A(), x),
            "gammaInverseUpper" => GammaFunctions.InverseUpper(A(), x),
            "betaLower" => BetaFunctions.Lower(A(), B(), x),
            "betaUpper" => BetaFunctions.Upper(A(), B(), x),
            "betaInverseLower" => BetaFunctions.InverseLower(A(), B(), x),
            "normal" => NormalDistribution.Cumulative(x),
            "normalQuantile" => NormalDistribution.Quantile(x),
            _ => throw new ArgumentOutOfRangeException(nameof(function), function, "The table has no such function."),
        };

        double A() => Table.Number(row, "a");
        double B() => Table.Number(row, "b");
    }
}
