using System.Globalization;
using Foundress.Science.Estimation;
using Foundress.Science;

namespace Foundress.Reference.Tests.Estimation.Apiary;

/// <summary>The posterior against 100,000 draws of Hamiltonian Monte Carlo by Stan: apiary-mcmc.tsv, made by make-apiary-mcmc.R.</summary>
public class ApiaryChainTests
{
    // Chance of a draw below a quantile of the chains: their own error is about 0.003, the quadrature's about 0.002.
    private const double ChanceTolerance = 0.011;

    [Theory]
    [InlineData("day 0 amitraz strip")]
    [InlineData("day 0 amitraz strip + thymol gel")]
    [InlineData("day 0 amitraz emulsifiable concentrate")]
    [InlineData("eight counted")]
    [InlineData("eight assumed")]
    [InlineData("eight loosely assumed")]
    [InlineData("no mites")]
    [InlineData("three colonies")]
    [InlineData("one colony")]
    [InlineData("odd sizes")]
    [InlineData("equal colonies")]
    public void FromJars_JarsOfALongChain_MatchesItsSummaries(string name)
    {
        ReferenceTable table = ReferenceTable.Read("apiary-mcmc.tsv");
        string[][] rows = [.. table.Rows.Where(row => table.Text(row, "case") == name)];
        Assert.True(rows.Length >= 4, $"The table has only {rows.Length} rows for {name}.");
        Assert.All(rows, row => Assert.InRange(table.Number(row, "largestRhat"), 0.99, 1.01));

        ApiaryPosterior posterior = ApiaryPosterior.FromJars(Jars(table, rows[0], name), table.Whole(rows[0], "unsampled"));
        var misses = new List<string>();
        double worst = 0d;
        foreach (string[] row in rows)
        {
            string quantity = table.Text(row, "quantity");
            if (quantity == "unsampledOver3")
            {
                ColonyCount over = posterior.UnsampledOver(MiteLevel.Per100(3d));
                Near(table.Number(row, "mean"), over.Mean, (5d * table.Number(row, "errorOfMean")) + (0.002 * over.Colonies), quantity);
                Near(table.Number(row, "mean"), posterior.ExpectedUnsampledOver(MiteLevel.Per100(3d)), (5d * table.Number(row, "errorOfMean")) + (0.002 * over.Colonies), quantity);
                continue;
            }

            if (quantity == "anyUnsampledOver3")
            {
                Near(table.Number(row, "mean"), posterior.ChanceAnyUnsampledOver(MiteLevel.Per100(3d)).Value, ChanceTolerance, quantity);
                continue;
            }

            // Known limits of describing one colony by merged gamma distributions: docs/methods/apiary.md, "Accuracy".
            double tolerance = !quantity.StartsWith("level", StringComparison.Ordinal) ? ChanceTolerance : name switch
            {
                "eight loosely assumed" => 0.045,
                "no mites" or "odd sizes" => 0.016,
                _ => ChanceTolerance,
            };
            Func<double, double> over3 = quantity switch
            {
                "populationMean" => level => posterior.ChancePopulationMeanOver(MiteLevel.Per100(level)).Value,
                "average" => level => posterior.ChanceMeanOver(MiteLevel.Per100(level)).Value,
                "spread" => spread => posterior.Spread.ChanceOver(spread).Value,
                _ => level => posterior.Sampled[Colony(quantity)].ChanceOver(MiteLevel.Per100(level)).Value,
            };
            foreach ((string column, double p) in (ReadOnlySpan<(string, double)>)[("q025", 0.025), ("q25", 0.25), ("q50", 0.5), ("q75", 0.75), ("q975", 0.975)])
                Near(1d - p, over3(table.Number(row, column)), tolerance, $"{quantity} {column}");
            Near(table.Number(row, "over3"), over3(3d), tolerance, $"{quantity} over 3");
            double mean = quantity switch
            {
                "populationMean" => posterior.PopulationMean.Per100Bees,
                "average" => posterior.Mean.Per100Bees,
                "spread" => posterior.Spread.Mean,
                _ => posterior.Sampled[Colony(quantity)].Mean.Per100Bees,
            };
            Near(table.Number(row, "mean"), mean, (5d * table.Number(row, "errorOfMean")) + (0.003 * table.Number(row, "mean")), $"{quantity} mean", false);
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"{name}: worst chance {worst:F4}");
        Assert.True(misses.Count == 0, string.Join('\n', misses));

        void Near(double expected, double actual, double allowed, string what, bool chance = true)
        {
            if (chance)
                worst = Math.Max(worst, Math.Abs(expected - actual));
            if (!(Math.Abs(expected - actual) <= allowed))
                misses.Add(string.Create(CultureInfo.InvariantCulture, $"{what}: chain {expected:G7}, quadrature {actual:G7}, tolerance {allowed:G3}"));
        }
    }

    private static int Colony(string quantity) => int.Parse(quantity["level".Length..], CultureInfo.InvariantCulture) - 1;

    private static List<ColonyJars> Jars(ReferenceTable table, string[] row, string name)
    {
        if (table.Text(row, "jars") == "trial")
            return TrialData.Arm(name["day 0 ".Length..], 0);
        List<ColonyJars> jars = [];
        foreach (string jar in table.Text(row, "jars").Split(','))
        {
            double[] parts = [.. jar.Split(':').Select(part => double.Parse(part, CultureInfo.InvariantCulture))];
            BeeCount bees = parts[2] > 0d ? BeeCount.Uncertain(BeeBasis.Assumed, parts[1], parts[2]) : BeeCount.Counted((int)parts[1]);
            jars.Add(new($"colony {jars.Count + 1}", [new JarCount((int)parts[0], bees)]));
        }

        return jars;
    }
}
