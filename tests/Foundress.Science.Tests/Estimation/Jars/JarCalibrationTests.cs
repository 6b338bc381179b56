using System.Globalization;
using CsCheck;
using Foundress.Science.Estimation;
using Foundress.Science.Numerics;

namespace Foundress.Science.Tests.Estimation.Jars;

public class JarCalibrationTests
{
    private static readonly JarPrior Cup = new(300d, 0.15, 1d, 4d);

    [Fact]
    public void From_NoJarCounted_IsThePrior()
    {
        JarCalibration none = JarCalibration.From(Cup, []);

        // Prior mean variance: 4 · 0.15² / 2 over 4/2 - 1; the next jar adds the mean's own (1 + 1/1).
        Assert.Equal(300d, none.UsualBees, 1e-9);
        Assert.Equal(Math.Sqrt(0.045), none.LogSpread, 1e-12);
        Assert.Equal(Math.Sqrt(0.09), none.NextJar.LogSpread, 1e-12);
        Assert.Equal(BeeBasis.Assumed, none.NextJar.Basis);
    }

    [Fact]
    public void From_TwoEqualJars_IsTheClosedForm()
    {
        // Weight 3; ln mean a third of the way from the jars to the prior; scale 0.045 + 1 · 2 · d² / (2 · 3); shape 3.
        JarCalibration two = JarCalibration.From(Cup, [360, 360]);
        double off = Math.Log(360d / 300d);

        Assert.Equal(300d * Math.Exp(2d * off / 3d), two.UsualBees, 1e-9);
        Assert.Equal(Math.Sqrt((0.045 + (off * off / 3d)) / 2d), two.LogSpread, 1e-12);
        Assert.Equal(two.LogSpread * Math.Sqrt(4d / 3d), two.NextJar.LogSpread, 1e-12);
    }

    [Fact]
    public void NextJar_ManyJarsCounted_ComesDownToTheirOwnSpread()
    {
        SeededGenerator generator = new(3);
        int[] jars = [.. Enumerable.Range(0, 2000).Select(_ => (int)Math.Round(322d * Math.Exp(0.13 * generator.NextNormal())))];
        BeeCount next = JarCalibration.From(Cup, jars).NextJar;

        Assert.Equal(322d, next.Bees, 4d);
        Assert.Equal(0.13, next.LogSpread, 0.006);
    }

    [Fact]
    public void From_JarsInAnotherOrderOrParts_SaysTheSame() =>
        Gen.Int[40, 900].Array[1, 12].Sample(
            jars =>
            {
                JarCalibration there = JarCalibration.From(Cup, jars);
                JarCalibration back = JarCalibration.From(Cup, [.. jars.Reverse()]);
                Assert.Equal(there.UsualBees, back.UsualBees, 1e-8);
                Assert.Equal(there.NextJarQuantile(0.1), back.NextJarQuantile(0.1), 1e-8);
                Assert.Equal(0.1, there.ChanceNextJarAtMost(there.NextJarQuantile(0.1)).Value, 1e-9);
                Assert.True(there.ExpectedLogSpreadAfter(5) < there.ExpectedLogSpreadAfter(0));
                Assert.True(there.ExpectedLogSpreadAfter(5) > there.LogSpread);
                Assert.InRange(there.UsualBees, there.UsualBeesQuantile(0.05), there.UsualBeesQuantile(0.95));
            },
            iter: 200, threads: 2);

    [Fact]
    public void ByScoop_MixedJars_KeepsObserversAndScoopsApart()
    {
        IReadOnlyList<ScoopCalibration> scoops = JarCalibration.ByScoop(
            Cup, [new("Ada", "half cup", 310), new("Ada", "ladle", 450), new("Ada", "half cup", 330), new("Bo", "half cup", 260)]);

        Assert.Equal(["Ada half cup 2", "Ada ladle 1", "Bo half cup 1"], scoops.Select(scoop => $"{scoop.Observer} {scoop.Scoop} {scoop.Calibration.Counted}"));
        Assert.True(scoops[1].Calibration.UsualBees > scoops[0].Calibration.UsualBees && scoops[0].Calibration.UsualBees > scoops[2].Calibration.UsualBees);
    }

    [Fact]
    public void NextJar_OnePickAndOneBucket_IsRefused() =>
        Assert.Throws<InvalidOperationException>(() => JarCalibration.From(Cup, [1, 100_000]).NextJar);

    [Fact]
    public void JarPrior_BadInput_Refuses()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new JarPrior(0d, 0.15, 1d, 4d));
        Assert.Throws<ArgumentOutOfRangeException>(() => new JarPrior(300d, 0d, 1d, 4d));
        Assert.Throws<ArgumentOutOfRangeException>(() => new JarPrior(300d, 0.15, 0d, 4d));
        Assert.Throws<ArgumentOutOfRangeException>(() => new JarPrior(300d, 0.15, 1d, 2d));
        Assert.Throws<ArgumentOutOfRangeException>(() => JarCalibration.From(Cup, [300, 0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new CountedJar("Ada", "ladle", 0));
    }

    /// <summary>Simulation-based calibration (Talts et al. 2018, arXiv:1804.06788): truths from the prior have uniform ranks.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(15)]
    public void From_TruthFromThePrior_RanksAreUniform(int jars)
    {
        const int Runs = 2000;
        const int Bins = 20;
        JarPrior prior = new(3000d, 0.15, 1d, 6d);
        SeededGenerator generator = SeededGenerator.ForPart(99, $"{jars} jars");
        int[][] bins = [new int[Bins], new int[Bins], new int[Bins]];
        for (int run = 0; run < Runs; run++)
        {
            double variance = 0.5 * prior.JarsForSpread * prior.LogSpread * prior.LogSpread / generator.NextGamma(0.5 * prior.JarsForSpread);
            double spread = Math.Sqrt(variance);
            double usual = Math.Log(prior.Bees) + (spread * generator.NextNormal() / Math.Sqrt(prior.JarsForMean));
            int[] counted = new int[jars];
            for (int i = 0; i < jars; i++)
                counted[i] = (int)Math.Round(Math.Exp(usual + (spread * generator.NextNormal())));
            JarCalibration calibration = JarCalibration.From(prior, counted);
            double next = Math.Exp(usual + (spread * generator.NextNormal()));

            bins[0][Bin(p => calibration.UsualBeesQuantile(p), Math.Exp(usual))]++;
            bins[1][Bin(p => calibration.LogSpreadQuantile(p), spread)]++;
            bins[2][Math.Min(Bins - 1, (int)(Bins * calibration.ChanceNextJarAtMost(next).Value))]++;
        }

        foreach (int[] counts in bins)
        {
            double chiSquared = counts.Sum(count => (count - 100d) * (count - 100d) / 100d);

            // R: qchisq(0.9995, 19) = 45.97.
            Assert.True(chiSquared < 45.97, string.Create(CultureInfo.InvariantCulture, $"chi-squared {chiSquared:F1} ({string.Join(' ', counts)})"));
        }

        static int Bin(Func<double, double> quantile, double truth)
        {
            int bin = 0;
            while (bin < Bins - 1 && truth > quantile((bin + 1d) / Bins))
                bin++;
            return bin;
        }
    }
}
