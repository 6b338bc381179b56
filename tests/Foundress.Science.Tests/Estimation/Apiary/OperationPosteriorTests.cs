using Foundress.Science.Estimation;
using Foundress.Science.Numerics;

namespace Foundress.Science.Tests.Estimation.Apiary;

public class OperationPosteriorTests
{
    private static readonly int[] Mites = [14, 3, 0, 9, 22, 5, 7, 2];

    [Fact]
    public void FromJars_NothingSampled_Refuses()
    {
        Assert.Throws<ArgumentException>(() => OperationPosterior.FromJars([]));
        Assert.Throws<ArgumentException>(() => OperationPosterior.FromJars([new ApiaryJars("Hill", [], 8)]));
        Assert.Throws<ArgumentException>(() => new ApiaryJars("Hill", [], 0));
    }

    [Fact]
    public void FromJars_ApiaryTwice_RefusesByName()
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() => OperationPosterior.FromJars([Apiary("Hill", 1d), Apiary("Hill", 2d)]));
        Assert.Contains("Hill", error.Message, StringComparison.Ordinal);
    }

    /// <summary>One apiary alone: its mean is lognormal with the variances of centre and between-apiary spread added, nearly the prior of a lone apiary.</summary>
    [Fact]
    public void FromJars_OneApiary_IsCloseToTheApiaryAlone()
    {
        ApiaryPosterior alone = ApiaryPosterior.FromJars(Colonies(1d), 12, new ApiaryPrior(MiteLevel.Per100(2d), Math.Sqrt(5d), 1.5));
        ApiaryPosterior pooled = OperationPosterior.FromJars([Apiary("Hill", 1d)]).Apiaries[0];

        foreach (double p in (ReadOnlySpan<double>)[0.05, 0.25, 0.75, 0.95])
        {
            LevelInterval interval = alone.MeanInterval(Math.Abs(1d - (2d * p)));
            Assert.Equal(alone.ChanceMeanOver(interval.Upper).Value, pooled.ChanceMeanOver(interval.Upper).Value, 0.01);
            Assert.Equal(alone.ChanceMeanOver(interval.Lower).Value, pooled.ChanceMeanOver(interval.Lower).Value, 0.01);
        }

        Assert.Equal(alone.Spread.Median, pooled.Spread.Median, 0.02);
    }

    [Fact]
    public void FromJars_AlikeApiaries_NarrowEachOther()
    {
        ApiaryPosterior alone = ApiaryPosterior.FromJars(Colonies(1d), 12);
        OperationPosterior operation = OperationPosterior.FromJars([.. Enumerable.Range(0, 6).Select(i => Apiary($"apiary {i}", 1d))]);

        Assert.True(operation.Apiaries[0].PopulationMeanInterval(0.95).Width < 0.7 * alone.PopulationMeanInterval(0.95).Width);
        Assert.True(operation.BetweenApiaries < 0.3);
    }

    [Fact]
    public void FromJars_UnlikeApiaries_KeepTheirOwnLevels()
    {
        OperationPosterior operation = OperationPosterior.FromJars([Apiary("low", 0.3), Apiary("middle", 1d), Apiary("high", 8d)]);

        Assert.True(operation.Apiaries[0].Mean < operation.Apiaries[1].Mean);
        Assert.True(operation.Apiaries[1].Mean < operation.Apiaries[2].Mean);
        Assert.True(operation.BetweenApiaries > 0.7);
        Assert.Equal(["low", "middle", "high"], operation.Names);
    }

    [Fact]
    public void FromJars_ApiaryNeverVisited_BorrowsWithAWiderInterval()
    {
        OperationPosterior operation = OperationPosterior.FromJars([Apiary("a", 1d), Apiary("b", 1.2), Apiary("c", 0.9), new ApiaryJars("d", [], 20)]);
        ApiaryPosterior unseen = operation.Apiaries[3];

        Assert.InRange(unseen.MedianOfMean.Per100Bees, 1.5, 4.5);
        Assert.True(unseen.MeanInterval(0.95).Width > operation.Apiaries[0].MeanInterval(0.95).Width);
        Assert.InRange(operation.ExpectedOver(MiteLevel.Per100(3d)), 10d, 40d);
    }

    /// <summary>Coverage of the apiary means over operations drawn with a log spread of 0.5 between apiaries and k of 1.5.</summary>
    [Fact]
    public void FromJars_SimulatedOperations_IntervalsCoverTheApiaryMeans()
    {
        SeededGenerator generator = SeededGenerator.ForPart(11, "operations");
        int held80 = 0;
        int held95 = 0;
        int all = 0;
        for (int run = 0; run < 15; run++)
        {
            SimulatedApiary[] truths = [.. Enumerable.Range(0, 6).Select(_ => SimulatedApiary.Draw(generator, 0.03 * Math.Exp(0.5 * generator.NextNormal()), Math.Sqrt(1d / 1.5), 4, 8, 1, 0d))];
            OperationPosterior operation = OperationPosterior.FromJars([.. truths.Select((truth, i) => new ApiaryJars($"apiary {i}", truth.Jars, 8))]);
            for (int i = 0; i < truths.Length; i++)
            {
                all++;
                held80 += operation.Apiaries[i].MeanInterval(0.8).Contains(truths[i].Average) ? 1 : 0;
                held95 += operation.Apiaries[i].MeanInterval(0.95).Contains(truths[i].Average) ? 1 : 0;
            }
        }

        // Apiaries of one operation hang together, so the error is taken for twice as few of them.
        Assert.InRange((double)held80 / all, 0.8 - (3d * Math.Sqrt(0.32 / all)), 0.8 + (3d * Math.Sqrt(0.32 / all)));
        Assert.InRange((double)held95 / all, 0.95 - (3d * Math.Sqrt(0.095 / all)), 1d);
    }

    private static ColonyJars[] Colonies(double factor) =>
        [.. Mites.Select((mites, i) => new ColonyJars($"colony {i}", [new JarCount((int)(mites * factor), BeeCount.Counted(300))]))];

    private static ApiaryJars Apiary(string name, double factor) => new(name, Colonies(factor), 12);
}
