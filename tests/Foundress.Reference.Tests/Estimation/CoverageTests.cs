using Foundress.Science.Estimation;
using Foundress.Science.Numerics;

namespace Foundress.Reference.Tests.Estimation;

/// <summary>The exact interval covers at least its confidence at every level (Garwood 1936), from 0.1 to 20 mites per 100 bees.</summary>
public class CoverageTests
{
    private const int MostMites = 260;

    [Theory]
    [InlineData(100, 0.95)]
    [InlineData(300, 0.8)]
    [InlineData(300, 0.95)]
    [InlineData(300, 0.99)]
    [InlineData(600, 0.95)]
    public void ExactPoisson_SummedOverAllCounts_CoversAtLeastItsConfidence(int bees, double confidence)
    {
        LevelInterval[] intervals = Intervals(bees, confidence);
        for (double level = 0.1; level <= 20d; level += 0.05)
        {
            double mean = level / 100d * bees;
            double mass = Math.Exp(-mean);
            double covered = 0d;
            for (int mites = 0; mites < MostMites; mites++)
            {
                if (level >= intervals[mites].Lower.Per100Bees && level <= intervals[mites].Upper.Per100Bees)
                    covered += mass;
                mass *= mean / (mites + 1);
            }

            Assert.True(covered >= confidence, $"At {level} per 100 and {bees} bees the interval covers {covered}, less than {confidence}.");
        }
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(8)]
    [InlineData(20)]
    public void ExactPoisson_SimulatedJars_CoversAtLeastItsConfidence(double level)
    {
        const int Bees = 300;
        const int Jars = 20000;
        LevelInterval[] intervals = Intervals(Bees, 0.9);
        var random = new SeededGenerator(20240611);
        int covered = 0;
        for (int jar = 0; jar < Jars; jar++)
        {
            LevelInterval interval = intervals[random.NextPoisson(level / 100d * Bees)];
            covered += level >= interval.Lower.Per100Bees && level <= interval.Upper.Per100Bees ? 1 : 0;
        }

        // Three standard errors of a share of 0.9 among 20,000.
        Assert.True(covered >= (0.9 - (3d * Math.Sqrt(0.09 / Jars))) * Jars, $"{covered} of {Jars} intervals cover {level} per 100.");
    }

    private static LevelInterval[] Intervals(int bees, double confidence) =>
        [.. Enumerable.Range(0, MostMites).Select(mites => CountIntervals.ExactPoisson(mites, bees, confidence))];
}
