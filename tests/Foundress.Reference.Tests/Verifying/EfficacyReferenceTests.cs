using System.Globalization;
using Foundress.Reference.Tests.Estimation.Apiary;
using Foundress.Science.Estimation;
using Foundress.Science.Numerics;
using Foundress.Science.Verifying;

namespace Foundress.Reference.Tests.Verifying;

public class EfficacyReferenceTests
{
    /// <summary>R's F distribution (qf, pf): tables by make-efficacy.R.</summary>
    [Fact]
    public void Colony_Interval_AgreesWithRsFDistribution()
    {
        ReferenceTable table = ReferenceTable.Read("efficacy.tsv");
        Agreement agreement = new(1e-8);
        foreach (string[] row in table.Rows)
        {
            EfficacyPosterior efficacy = EfficacyOf.Colony(JarPairs.Of(
                table.Whole(row, "before"), table.Whole(row, "after"), table.Whole(row, "beesBefore"), table.Whole(row, "beesAfter"))).Efficacy!;
            EfficacyInterval interval = efficacy.Interval(table.Number(row, "confidence"));
            string what = string.Join('/', row[..5]);
            agreement.Check(1 - table.Number(row, "lower"), 1 - interval.Lower, what + " lower");
            agreement.Check(1 - table.Number(row, "upper"), 1 - interval.Upper, what + " upper");
            // Chances this small are of no use to anybody; the rest agree in relative terms.
            if (table.Number(row, "chance90") > 1e-6)
                agreement.Check(table.Number(row, "chance90"), efficacy.ChanceAtLeast(0.9).Value, what + " chance");
        }

        agreement.AssertAll(600);
    }

    /// <summary>
    /// A general engine (Stan, 120,000 draws; weighted draws for three colonies) on the same model: the chance of lying below each of its quantiles. Tables by
    /// make-efficacy-mcmc.R; arms of the open trial are read from its own table.
    /// </summary>
    [Fact]
    public void Group_Posterior_AgreesWithMarkovChains()
    {
        ReferenceTable table = ReferenceTable.Read("efficacy-mcmc.tsv");
        double worst = 0d;
        int compared = 0;
        foreach (string[] row in table.Rows)
        {
            string shown = table.Text(row, "case");
            if (!shown.Contains(':', StringComparison.Ordinal) && TrialData.Path is null)
                continue;
            EfficacyPosterior efficacy = EfficacyOf.Group(shown.Contains(':', StringComparison.Ordinal) ? Read(shown) : Arm(shown)).Efficacy!;
            foreach ((string column, double p) in new[] { ("q05", 0.05), ("q50", 0.5), ("q95", 0.95) })
            {
                double below = 1 - efficacy.ChanceAtLeast(table.Number(row, column)).Value;
                worst = Math.Max(worst, Math.Abs(below - p));
                compared++;
                Assert.True(Math.Abs(below - p) < 0.01, $"{shown} {column}: {below} instead of {p}");
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(CultureInfo.InvariantCulture, $"worst {worst:F4}"));
        Assert.True(compared >= 18, $"only {compared} quantiles were compared");
    }

    /// <summary>
    /// The open trial, day 0 to 21. Totals by arm (11.15 to 1.91, 11.05 to 1.09 and 11.04 to 0.34 mites per 100 bees) lie in our
    /// 90 % intervals, and the authors' contrasts at day 21 (1.935, standard error 0.685; 5.727, 95 % 2.23 to 14.72) in the interval
    /// of the ratio of what is left.
    /// </summary>
    [Theory]
    [InlineData("amitraz strip", 11.15, 1.91, 0)]
    [InlineData("amitraz strip + thymol gel", 11.05, 1.09, 1.935)]
    [InlineData("amitraz emulsifiable concentrate", 11.04, 0.34, 5.727)]
    public void Group_OpenTrialArms_HoldTotalsAndContrasts(string arm, double before, double after, double contrast)
    {
        EfficacyPosterior efficacy = EfficacyOf.Group(Arm(arm)).Efficacy!;
        EfficacyInterval interval = efficacy.Interval(0.9);
        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{arm}: {efficacy.Median:P1}, {interval.Lower:P1} to {interval.Upper:P1}"));

        Assert.True(interval.Contains(1 - (after / before)), $"{1 - (after / before)} lies outside {interval.Lower} to {interval.Upper}.");
        if (contrast == 0)
            return;

        // Strips over the other arm: one minus an efficacy "against controls".
        EfficacyInterval ratio = EfficacyOf.AgainstControls(Arm("amitraz strip"), Arm(arm)).Efficacy!.Interval(0.95);
        Assert.InRange(contrast, 1 - ratio.Upper, 1 - ratio.Lower);
    }

    /// <summary>Simulated jars, one to four mites per 100 bees and more, spread 0.5 between colonies: 90 % intervals hold the truth about as often as they say.</summary>
    [Theory]
    [InlineData(3, 0.95)]
    [InlineData(8, 0.95)]
    [InlineData(8, 0.8)]
    [InlineData(20, 0.8)]
    public void Group_SimulatedJars_IntervalsHoldTheTruth(int colonies, double truth)
    {
        const int Runs = 300;
        SeededGenerator generator = SeededGenerator.ForPart(5, $"{colonies}/{truth}");
        int held = 0;
        for (int run = 0; run < Runs; run++)
        {
            JarPair[] pairs = new JarPair[colonies];
            for (int i = 0; i < colonies; i++)
            {
                double level = 15d * (0.2 + generator.NextGamma(1d));
                pairs[i] = JarPairs.Of(1 + generator.NextPoisson(level), generator.NextPoisson(level * (1d - truth) * generator.NextGamma(4d) / 4d));
            }

            held += EfficacyOf.Group(pairs).Efficacy!.Interval(0.9).Contains(truth) ? 1 : 0;
        }

        // 300 runs: four standard errors of 90 % are 7 points.
        Assert.InRange(held / (double)Runs, 0.83, 0.985);
    }

    private static JarPair[] Read(string shown) =>
        [.. shown.Split(',').Select(pair => pair.Split(':').Select(n => int.Parse(n, CultureInfo.InvariantCulture)).ToArray()).Select(n => JarPairs.Of(n[0], n[2], n[1], n[3]))];

    private static JarPair[] Arm(string arm)
    {
        var after = TrialData.Arm(arm, 21).ToDictionary(colony => colony.Colony, StringComparer.Ordinal);
        return [.. TrialData.Arm(arm, 0).Where(colony => after.ContainsKey(colony.Colony)).Select(colony => new JarPair(colony.Jars, after[colony.Colony].Jars))];
    }
}
