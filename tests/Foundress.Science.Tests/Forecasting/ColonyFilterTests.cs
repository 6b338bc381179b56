using Foundress.Science.Dynamics;
using Foundress.Science.Forecasting;
using Foundress.Science.Numerics;
using Foundress.Science.Tests.Dynamics;

namespace Foundress.Science.Tests.Forecasting;

public class ColonyFilterTests
{
    [Fact]
    public void Run_SameSeed_GivesTheSameWhateverTheOrderOfCounts()
    {
        Evidence[] counts = [PlainForecast.Jar(30, 4), PlainForecast.Jar(60, 9), PlainForecast.Jar(60, 2), PlainForecast.Jar(90, 20)];
        ColonyFilter filter = new(500);
        float[] first = After(filter, PlainForecast.History(counts), 120, 5);
        _ = After(filter, PlainForecast.History(PlainForecast.Jar(10, 0)), 40, 9);
        Array.Reverse(counts);

        Assert.Equal(first, After(filter, PlainForecast.History(counts), 120, 5));
        Assert.NotEqual(first, After(filter, PlainForecast.History(counts), 120, 6));
    }

    /// <summary>A colony that cannot change: then the filter's answer is that of one integral over the lognormal start, done by quadrature.</summary>
    [Theory]
    [InlineData(3, 300, 12)]
    [InlineData(0, 300, 0)]
    [InlineData(25, 250, 30)]
    public void Run_ColonyThatCannotChange_MatchesQuadrature(int firstMites, int bees, int secondMites)
    {
        MiteBiology still = PlainColony.Biology with { DeathBroodless = 0d, DeathWithBrood = 0d, LoadHazard = 0d, WeeklySpread = 0d, BeesWeeklySpread = 0d };
        ColonyDays days = PlainColony.Days(PlainColony.Even(40, 1e6f, 0f, 0f), still);
        ForecastPriors priors = PlainForecast.Priors with { InflowMedian = 0.001, LateInflowMedian = 0.001, InflowApiarySpread = 0.01, InflowColonySpread = 0.01 };
        ColonyHistory history = new(days, 0, 0.01, [PlainForecast.Jar(10, firstMites, bees), PlainForecast.Jar(30, secondMites, bees)], []);
        double sum = 0d, mean = 0d, square = 0d;
        double spread = Math.Sqrt((priors.StartApiarySpread * priors.StartApiarySpread) + (priors.StartColonySpread * priors.StartColonySpread));
        for (double z = -6d; z <= 6d; z += 0.01)
        {
            double log = Math.Log(0.01) + (spread * z);
            double weight = Math.Exp(-0.5 * z * z) * Chances(firstMites, bees, log, priors) * Chances(secondMites, bees, log, priors);
            (sum, mean, square) = (sum + weight, mean + (weight * log), square + (weight * log * log));
        }

        mean /= sum;
        double deviation = Math.Sqrt((square / sum) - (mean * mean));
        ColonyFilter filter = new(20_000);
        filter.Run(history, ColonyBelief.Before(history, priors), priors, 30, 3);
        double[] logs = [.. PlainForecast.Loads(filter, history).Where(load => load > 0f).Select(load => Math.Log(load))];

        double found = logs.Average();
        // Five standard errors of 20,000 particles, of which a quarter count.
        Assert.Equal(mean, found, 5d * deviation / Math.Sqrt(5000d));
        Assert.Equal(deviation, Math.Sqrt(logs.Average(log => (log - found) * (log - found))), 0.06 * deviation);
    }

    [Fact]
    public void Run_TwoThousandParticles_AgreesWithAVeryLongRun()
    {
        ColonyHistory history = PlainForecast.History(PlainForecast.Jar(30, 2), PlainForecast.Jar(60, 6), PlainForecast.Jar(90, 8), PlainForecast.Jar(120, 30));
        double[] usual = [.. Enumerable.Range(1, 8).Select(seed => MeanLog(After(new ColonyFilter(2000), history, 150, (ulong)seed)))];
        float[] reference = After(new ColonyFilter(200_000), history, 150, 99);
        double expected = MeanLog(reference);
        double spread = Math.Sqrt(reference.Average(load => Math.Pow(Math.Log(load) - expected, 2)));

        Assert.Equal(expected, usual.Average(), 0.06 * spread);
        Assert.All(usual, mean => Assert.Equal(expected, mean, 0.2 * spread));
    }

    /// <summary>
    /// Simulation-based calibration (Talts et al. 2018, arXiv 1804.06788): colonies and counts drawn from the model's own
    /// beliefs; the rank of the true load among the filter's particles is uniform.
    /// </summary>
    [Fact]
    public void Run_CountsOfTheModelItself_RanksAreUniform()
    {
        const int Colonies = 320;
        const int Bins = 8;
        int[] visits = [30, 60, 90, 120];
        ColonyHistory empty = PlainForecast.Of(140, 0.01);
        ColonyFilter truth = new(Colonies);
        truth.Run(empty, ColonyBelief.Before(empty, PlainForecast.Priors), PlainForecast.Priors, 140, 2024, keepCourse: true);
        ColonyOutlook course = truth.Course(1d);
        ColonyFilter filter = new(400);
        int[] bins = new int[Bins];
        SeededGenerator generator = new(17);
        for (int colony = 0; colony < Colonies; colony++)
        {
            Evidence[] counts = [.. visits.Select(day => PlainForecast.Jar(day, Mites(generator, course.Loads(day)[colony])))];
            ColonyHistory history = PlainForecast.Of(140, 0.01, counts);
            filter.Run(history, ColonyBelief.Before(history, PlainForecast.Priors), PlainForecast.Priors, 139, (ulong)colony);
            float actual = course.Loads(139)[colony];
            double rank = PlainForecast.Loads(filter, history).Count(load => load < actual) / 400d;
            bins[Math.Min((int)(rank * Bins), Bins - 1)]++;
        }

        // Chi-square with 7 degrees of freedom: above 24.3 by chance once in a thousand.
        double expected = (double)Colonies / Bins;
        Assert.True(bins.Sum(bin => (bin - expected) * (bin - expected) / expected) < 24.3, string.Join(", ", bins));
    }

    [Fact]
    public void Run_CountFarFromTheBelief_DrawsAnewAndSaysSo()
    {
        ColonyHistory history = PlainForecast.Of(200, 0.0005, PlainForecast.Jar(30, 30), PlainForecast.Jar(32, 33), PlainForecast.Jar(34, 28));
        ColonyFilter filter = new(1000);

        FilterReport report = filter.Run(history, ColonyBelief.Before(history, PlainForecast.Priors), PlainForecast.Priors, 40, 1);

        Assert.Equal(3, report.Passes);
        double level = Math.Exp(MeanLog(PlainForecast.Loads(filter, history)));
        Assert.InRange(level, 0.04, 0.2);
    }

    [Fact]
    public void Run_UntilBeforeACount_DoesNotUseIt()
    {
        ColonyHistory with = PlainForecast.History(PlainForecast.Jar(30, 5), PlainForecast.Jar(90, 200));
        ColonyHistory without = PlainForecast.History(PlainForecast.Jar(30, 5));
        Assert.Equal(After(new ColonyFilter(300), without, 60, 4), After(new ColonyFilter(300), with, 60, 4));
    }

    private static float[] After(ColonyFilter filter, ColonyHistory history, int until, ulong seed)
    {
        filter.Run(history, ColonyBelief.Before(history, PlainForecast.Priors), PlainForecast.Priors, until, seed);
        return PlainForecast.Loads(filter, history);
    }

    private static double MeanLog(float[] loads) => loads.Average(load => Math.Log(Math.Max(load, 1e-7f)));

    private static int Mites(SeededGenerator generator, double load) =>
        generator.NextPoisson(load * 300d * generator.NextGamma(PlainForecast.Priors.JarSize) / PlainForecast.Priors.JarSize);

    private static double Chances(int mites, int bees, double logLoad, ForecastPriors priors)
    {
        double NegativeBinomial(double mean, double size) => Math.Exp(
            GammaFunctions.LogGamma(mites + size) - GammaFunctions.LogGamma(size) - GammaFunctions.LogGamma(mites + 1d)
            + (size * Math.Log(size / (size + mean))) + (mites * Math.Log(mean / (size + mean))));
        return ((1d - priors.StrayShare) * NegativeBinomial(bees * Math.Exp(logLoad), priors.JarSize)) + (priors.StrayShare * NegativeBinomial(bees * priors.StrayLoad, 0.5));
    }
}
