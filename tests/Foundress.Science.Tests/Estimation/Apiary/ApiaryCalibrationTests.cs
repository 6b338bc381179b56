using System.Globalization;
using Foundress.Science.Estimation;
using Foundress.Science.Numerics;

namespace Foundress.Science.Tests.Estimation.Apiary;

/// <summary>
/// Simulation-based calibration (Talts et al. 2018, arXiv:1804.06788): where truth and jars are drawn from prior and model, the
/// posterior chance of being below the truth is uniform. Fixed seeds; longer runs are in docs/methods/apiary.md.
/// </summary>
public class ApiaryCalibrationTests
{
    private const int Bins = 20;

    // Chi-squared with 19 degrees of freedom exceeds this with chance 0.0005 (R: qchisq(0.9995, 19) = 45.97).
    private const double ChiSquaredBound = 45.97;

    [Theory]
    [InlineData(8, 12, 1, 0d)]
    [InlineData(3, 2, 1, 0d)]
    [InlineData(4, 4, 2, 0.2)]
    public void FromJars_TruthFromThePrior_RanksAreUniform(int sampled, int unsampled, int jarsEach, double logSpread)
    {
        const int Runs = 400;
        SeededGenerator generator = SeededGenerator.ForPart(2024, $"{sampled} {unsampled} {jarsEach}");
        string[] names = ["population mean", "apiary mean", "spread", "sampled colony", "unsampled colony"];
        int[][] bins = [.. names.Select(_ => new int[Bins])];
        ApiaryPrior prior = ApiaryPrior.Weak;
        for (int run = 0; run < Runs; run++)
        {
            double mean = prior.Median.PerBee * Math.Exp(prior.LogSpread * generator.NextNormal());
            double spread;
            do
                spread = prior.SpreadScale * Math.Abs(generator.NextNormal());
            while (spread is >= ApiaryPrior.WidestSpread or < 1e-3);
            SimulatedApiary truth = SimulatedApiary.Draw(generator, mean, spread, sampled, unsampled, jarsEach, logSpread);
            ApiaryPosterior posterior = ApiaryPosterior.FromJars(truth.Jars, unsampled);

            double[] below =
            [
                posterior.ChancePopulationMeanOver(MiteLevel.FromPerBee(mean)).Value,
                posterior.ChanceMeanOver(truth.Average).Value,
                posterior.Spread.ChanceOver(spread).Value,
                posterior.Sampled[0].ChanceOver(MiteLevel.FromPerBee(truth.Levels[0])).Value,
                posterior.ChanceUnsampledOver(MiteLevel.FromPerBee(truth.Levels[^1])).Value,
            ];
            for (int i = 0; i < below.Length; i++)
                bins[i][Math.Min(Bins - 1, (int)(below[i] * Bins))]++;
        }

        var misses = new List<string>();
        for (int i = 0; i < names.Length; i++)
        {
            double expected = (double)Runs / Bins;
            double chiSquared = bins[i].Sum(count => (count - expected) * (count - expected) / expected);
            string told = string.Create(CultureInfo.InvariantCulture, $"{names[i]}: chi-squared {chiSquared:F1} ({string.Join(' ', bins[i])})");
            TestContext.Current.TestOutputHelper?.WriteLine(told);
            if (chiSquared > ChiSquaredBound)
                misses.Add(told);
        }

        Assert.True(misses.Count == 0, string.Join('\n', misses));
    }

    /// <summary>
    /// Coverage at fixed truths, which a posterior need not have. Averaged over the grid it must be the nominal one within
    /// Monte Carlo error and a point or two of leaning; no place of the grid may fall far short at 95 %.
    /// </summary>
    [Fact]
    public void MeanInterval_GridOfTruths_CoversAsOftenAsItSays()
    {
        double[] confidences = [0.5, 0.8, 0.95];
        int[] mean = new int[3];
        int[] colony = new int[3];
        int runs = 0;
        double worst = 1d;
        string where = string.Empty;
        foreach (int sampled in (ReadOnlySpan<int>)[3, 8, 20])
        {
            foreach (double shape in (ReadOnlySpan<double>)[0.3, 1d, 5d])
            {
                foreach (double level in (ReadOnlySpan<double>)[0.2, 1d, 4d, 15d])
                {
                    string place = string.Create(CultureInfo.InvariantCulture, $"{sampled} colonies, k {shape}, level {level}");
                    SeededGenerator generator = SeededGenerator.ForPart(7, place);
                    const int Repeats = 16;
                    int hits = 0;
                    for (int run = 0; run < Repeats; run++)
                    {
                        SimulatedApiary truth = SimulatedApiary.Draw(generator, level / 100d, Math.Sqrt(1d / shape), sampled, 2 * sampled, 1, 0d);
                        ApiaryPosterior posterior = ApiaryPosterior.FromJars(truth.Jars, 2 * sampled);
                        for (int c = 0; c < confidences.Length; c++)
                        {
                            bool held = posterior.MeanInterval(confidences[c]).Contains(truth.Average);
                            mean[c] += held ? 1 : 0;
                            hits += held && c == 2 ? 1 : 0;
                            colony[c] += posterior.Sampled[0].Interval(confidences[c]).Contains(MiteLevel.FromPerBee(truth.Levels[0])) ? 1 : 0;
                        }

                        runs++;
                    }

                    if ((double)hits / Repeats < worst)
                        (worst, where) = ((double)hits / Repeats, place);
                }
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"mean {string.Join(' ', mean.Select(hits => (double)hits / runs))}, colony {string.Join(' ', colony.Select(hits => (double)hits / runs))}, worst at 95 %: {worst} ({where})"));
        for (int c = 0; c < confidences.Length; c++)
        {
            double error = Math.Sqrt(confidences[c] * (1d - confidences[c]) / runs);
            Assert.InRange((double)mean[c] / runs, confidences[c] - (3d * error) - 0.01, confidences[c] + (3d * error) + 0.03);
            Assert.InRange((double)colony[c] / runs, confidences[c] - (3d * error) - 0.015, confidences[c] + (3d * error) + 0.015);
        }

        Assert.InRange(worst, 0.6, 1d);
    }
}
