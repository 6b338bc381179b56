using System.Globalization;
using Foundress.Science.Estimation;
using Foundress.Science.Numerics;

namespace Foundress.Science.Tests.Estimation.Breeding;

public class GrowthRankingTests
{
    private static readonly double[] Days = [0d, 30d, 60d, 90d];

    [Fact]
    public void Of_TooFewOrTwiceNamed_Refuses()
    {
        ColonyCourse[] four = [.. Enumerable.Range(0, 4).Select(i => Course($"colony {i}", [3, 6, 12, 24]))];
        Assert.Throws<ArgumentException>(() => GrowthRanking.Of(four));
        ArgumentException twice = Assert.Throws<ArgumentException>(() => GrowthRanking.Of([.. four, Course("colony 2", [1, 2, 3, 4])]));
        Assert.Contains("colony 2", twice.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => GrowthRanking.Of([.. four, Course("colony 4", [1, 2, 3, 4])], 1.5));
    }

    [Fact]
    public void Of_EqualColonies_IsNoise()
    {
        GrowthRanking ranking = GrowthRanking.Of(Simulate(3, 20, 0d).Courses);

        Assert.True(ranking.IsNoise);
        Assert.InRange(ranking.HitRate, 0.2, 0.5);
        Assert.InRange(ranking.Reliability, 0d, 0.4);
        Assert.Equal(0.02, ranking.MeanGrowth, 0.004);
    }

    [Fact]
    public void Of_StronglyUnequalColonies_IsNotNoise()
    {
        GrowthRanking ranking = GrowthRanking.Of(Simulate(3, 20, 0.015).Courses);

        Assert.False(ranking.IsNoise);
        Assert.True(ranking.Reliability > 0.6);
        Assert.Equal(4, ranking.PickSize);
    }

    /// <summary>The chances of all colonies add up to the number of places among the best.</summary>
    [Fact]
    public void Of_AnyColonies_ChancesAddUpToThePlaces()
    {
        foreach (double spread in (ReadOnlySpan<double>)[0d, 0.005, 0.02])
        {
            GrowthRanking ranking = GrowthRanking.Of(Simulate(17, 23, spread).Courses);
            Assert.Equal(ranking.PickSize, ranking.Colonies.Sum(colony => colony.ChanceInBestFifth.Value), 0.02 * ranking.PickSize);
        }
    }

    /// <summary>Of colonies given a chance of about p to be in the best fifth, about p are: over 20 simulated yards of 15.</summary>
    [Fact]
    public void ChanceInBestFifth_SimulatedYards_ComesTrueAsOftenAsItSays()
    {
        double[] edges = [0.1, 0.3, 0.6, 1.01];
        double[] told = new double[4];
        double[] variance = new double[4];
        int[] came = new int[4];
        int held = 0;
        int all = 0;
        for (int yard = 0; yard < 20; yard++)
        {
            (ColonyCourse[] courses, Dictionary<string, double> truth) = Simulate(1000UL + (ulong)yard, 15, 0.01);
            GrowthRanking ranking = GrowthRanking.Of(courses);
            HashSet<string> best = [.. truth.OrderBy(pair => pair.Value).Take(ranking.PickSize).Select(pair => pair.Key)];
            foreach (ColonyGrowth colony in ranking.Colonies)
            {
                double p = colony.ChanceInBestFifth.Value;
                int bin = Array.FindIndex(edges, edge => p < edge);
                told[bin] += p;
                variance[bin] += p * (1d - p);
                came[bin] += best.Contains(colony.Colony) ? 1 : 0;
                held += colony.Interval(0.8).Contains(truth[colony.Colony]) ? 1 : 0;
                all++;
            }
        }

        for (int bin = 0; bin < 4; bin++)
            Assert.InRange(came[bin], told[bin] - (3.5 * Math.Sqrt(variance[bin])) - 1d, told[bin] + (3.5 * Math.Sqrt(variance[bin])) + 1d);
        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(CultureInfo.InvariantCulture, $"80 % intervals held {held} of {all}"));

        // Colonies of one yard share the estimated mean, so the error is taken for half as many.
        Assert.InRange((double)held / all, 0.8 - (3.5 * Math.Sqrt(0.32 / all)), 0.8 + (3.5 * Math.Sqrt(0.32 / all)));
    }

    /// <summary>A control that cuts the level says nothing about growth: the same stretches at another level rank the same.</summary>
    [Fact]
    public void Of_LevelCutByAControl_LeavesGrowthAlone()
    {
        ColonyCourse[] others = [.. Enumerable.Range(0, 6).Select(i => Course($"colony {i}", [10 + i, 20 + i, 38 + i, 70 + i]))];
        ColonyCourse cut = new("cut", [Stretch([0d, 30d], [20, 40], 300), Stretch([60d, 90d], [20, 40], 300)]);
        ColonyCourse cutMore = new("cut", [Stretch([0d, 30d], [20, 40], 300), Stretch([60d, 90d], [20, 40], 3000)]);

        ColonyGrowth one = GrowthRanking.Of([.. others, cut]).Colonies.Single(colony => colony.Colony == "cut");
        ColonyGrowth two = GrowthRanking.Of([.. others, cutMore]).Colonies.Single(colony => colony.Colony == "cut");

        Assert.Equal(one.Mean, two.Mean, 1e-9);
        Assert.Equal(Math.Log(2d) / 30d, one.Mean, 0.006);
    }

    [Fact]
    public void Of_ColonyWithoutInformation_IsPlacedByTheOthers()
    {
        ColonyCourse[] others = [.. Enumerable.Range(0, 9).Select(i => Course($"colony {i}", [10, 20, 38, 70 + (9 * i)]))];
        GrowthRanking ranking = GrowthRanking.Of([.. others, Course("zero", [0, 0, 0, 0]), new ColonyCourse("once", [Stretch([0d], [9], 300)])]);

        foreach (string name in (string[])["zero", "once"])
        {
            ColonyGrowth blank = ranking.Colonies.Single(colony => colony.Colony == name);
            Assert.False(blank.FromJars);
            Assert.Equal(ranking.MeanGrowth, blank.Mean, 0.002);
        }
    }

    [Fact]
    public void Of_VisitsStrayingFromTheCourse_WidenTheIntervals()
    {
        ColonyCourse[] courses = Simulate(3, 12, 0.01).Courses;

        double steady = GrowthRanking.Of(courses).Colonies.Average(colony => colony.StandardDeviation);
        double straying = GrowthRanking.Of(courses, 0.4).Colonies.Average(colony => colony.StandardDeviation);

        Assert.True(straying > 1.1 * steady);
    }

    private static (ColonyCourse[] Courses, Dictionary<string, double> Truth) Simulate(ulong seed, int colonies, double spread)
    {
        SeededGenerator generator = new(seed);
        var truth = new Dictionary<string, double>(StringComparer.Ordinal);
        ColonyCourse[] courses = new ColonyCourse[colonies];
        for (int i = 0; i < colonies; i++)
        {
            double growth = 0.02 + (spread * generator.NextNormal());
            double level = 0.01 * Math.Exp(0.5 * generator.NextNormal());
            courses[i] = Course($"colony {i}", [.. Days.Select(day => generator.NextPoisson(300d * level * Math.Exp(growth * day)))]);
            truth.Add(courses[i].Colony, growth);
        }

        return (courses, truth);
    }

    private static ColonyCourse Course(string name, int[] mites) => new(name, [Stretch(Days, mites, 300)]);

    private static CourseVisit[] Stretch(double[] days, int[] mites, int bees) =>
        [.. days.Select((day, i) => new CourseVisit(day, [new JarCount(mites[i], BeeCount.Counted(bees))]))];
}
