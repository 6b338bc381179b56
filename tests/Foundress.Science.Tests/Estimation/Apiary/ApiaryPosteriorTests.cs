using CsCheck;
using Foundress.Science.Estimation;

namespace Foundress.Science.Tests.Estimation.Apiary;

public class ApiaryPosteriorTests
{
    private static readonly MiteLevel Line = MiteLevel.Per100(3d);

    [Fact]
    public void FromJars_NoColony_Refuses()
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() => ApiaryPosterior.FromJars([], 5));
        Assert.Contains("at least one", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void FromJars_ColonyTwice_RefusesByName()
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() => ApiaryPosterior.FromJars([One("Ash", 3), One("Ash", 4)], 0));
        Assert.Contains("Ash", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(100_001)]
    public void FromJars_UnsampledOutOfRange_Refuses(int unsampled) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ApiaryPosterior.FromJars([One("Ash", 3)], unsampled));

    [Fact]
    public void ColonyJars_NoJarOrName_Refuses()
    {
        Assert.Throws<ArgumentException>(() => new ColonyJars("Ash", []));
        Assert.Throws<ArgumentException>(() => new ColonyJars(" ", [new JarCount(1, BeeCount.Counted(300))]));
    }

    [Fact]
    public void FromJars_OneColony_SaysThatTheSpreadIsNotIdentified()
    {
        Assert.False(ApiaryPosterior.FromJars([One("Ash", 9)], 7).SpreadIdentified);
        Assert.False(ApiaryPosterior.FromJars([One("Ash", 0), One("Elm", 0)], 7).SpreadIdentified);
        Assert.True(ApiaryPosterior.FromJars([One("Ash", 9), One("Elm", 0)], 7).SpreadIdentified);
    }

    /// <summary>Colonies that the jars show to be alike, all sampled: the mean is that of one big jar, whose posterior with Jeffreys' prior is closed-form.</summary>
    [Fact]
    public void MeanInterval_ManyEqualColonies_IsThatOfOneBigJar()
    {
        ColonyJars[] jars = [.. Enumerable.Range(0, 60).Select(i => new ColonyJars($"colony {i}", [new JarCount(90 + (i % 3), BeeCount.Counted(3000))]))];
        LevelPosterior together = LevelPosterior.FromJar(60 * 91, BeeCount.Counted(60 * 3000));

        ApiaryPosterior posterior = ApiaryPosterior.FromJars(jars, 0);

        foreach (double confidence in (ReadOnlySpan<double>)[0.5, 0.8, 0.95])
        {
            LevelInterval interval = posterior.MeanInterval(confidence);
            LevelInterval expected = together.Interval(confidence);
            Assert.Equal(expected.Lower.Per100Bees, interval.Lower.Per100Bees, 0.02 * expected.Width);
            Assert.Equal(expected.Upper.Per100Bees, interval.Upper.Per100Bees, 0.02 * expected.Width);
        }
    }

    /// <summary>A colony whose own jars leave nothing open: apiary and prior hardly move it from its own closed-form posterior.</summary>
    [Fact]
    public void Sampled_HugeJar_KeepsItsOwnPosterior()
    {
        ApiaryPosterior posterior = ApiaryPosterior.FromJars([One("Ash", 4000, 100_000), One("Elm", 3), One("Oak", 30)], 4);
        LevelInterval alone = LevelPosterior.FromJar(4000, BeeCount.Counted(100_000)).Interval(0.95);

        LevelInterval interval = posterior.Sampled[0].Interval(0.95);

        Assert.Equal(alone.Lower.Per100Bees, interval.Lower.Per100Bees, 0.02 * alone.Width);
        Assert.Equal(alone.Upper.Per100Bees, interval.Upper.Per100Bees, 0.02 * alone.Width);
    }

    [Fact]
    public void Sampled_OddColony_IsDrawnTowardsTheApiary()
    {
        ApiaryPosterior posterior = ApiaryPosterior.FromJars([One("Ash", 0), One("Elm", 9), One("Oak", 8), One("Fir", 10), One("Yew", 30, 300)], 0);

        Assert.True(posterior.Sampled[0].Mean > posterior.Sampled[0].OwnLevel);
        Assert.True(posterior.Sampled[4].Mean < posterior.Sampled[4].OwnLevel);
    }

    /// <summary>One jar of 600 bees says what two of 300 bees of the same colony say.</summary>
    [Fact]
    public void FromJars_JarsOfOneColony_ArePooled()
    {
        ApiaryPosterior split = ApiaryPosterior.FromJars([new("Ash", [new JarCount(4, BeeCount.Counted(300)), new JarCount(7, BeeCount.Counted(310))]), One("Elm", 2)], 3);
        ApiaryPosterior whole = ApiaryPosterior.FromJars([One("Ash", 11, 610), One("Elm", 2)], 3);

        Assert.Equal(whole.Mean, split.Mean);
        Assert.Equal(whole.Sampled[0].Interval(0.9), split.Sampled[0].Interval(0.9));
    }

    /// <summary>
    /// Several assumed jars of a lone colony, against its exact posterior with Jeffreys' prior (each jar's bees averaged out). The prior
    /// of the apiary's mean is set so that it rises with the root of the level where the jars are, as Jeffreys' does on the
    /// log scale, and the spread is next to nothing: what is left to differ is how the uncertain exposures are pooled.
    /// </summary>
    [Theory]
    [InlineData(0.15, 0.004)]
    [InlineData(0.3, 0.01)]
    public void FromJars_SeveralAssumedJars_PoolLikeTheExactPosterior(double logSpread, double tolerance)
    {
        BeeCount bees = BeeCount.Uncertain(BeeBasis.Assumed, 300d, logSpread);
        JarCount[] jars = [new(24, bees), new(41, bees), new(30, BeeCount.Counted(320)), new(37, bees)];
        LevelPosterior exact = LevelPosterior.FromJars(jars);
        ApiaryPrior likeJeffreys = new(MiteLevel.FromPerBee(exact.Median.PerBee * Math.Exp(0.5 * 25d)), 5d, 0.05);
        ApiaryPosterior posterior = ApiaryPosterior.FromJars([new("Ash", jars)], 0, likeJeffreys);

        foreach (double p in (ReadOnlySpan<double>)[0.05, 0.25, 0.5, 0.75, 0.95])
            Assert.Equal(1d - p, posterior.Sampled[0].ChanceOver(exact.Quantile(p)).Value, tolerance);
    }

    [Fact]
    public void FromJars_AssumedBees_WidenTheInterval()
    {
        int[] mites = [14, 13, 10, 9, 12, 15, 17, 12];
        ApiaryPosterior counted = ApiaryPosterior.FromJars([.. mites.Select((m, i) => One($"colony {i}", m))], 0);
        ApiaryPosterior assumed = ApiaryPosterior.FromJars(
            [.. mites.Select((m, i) => new ColonyJars($"colony {i}", [new JarCount(m, BeeCount.Uncertain(BeeBasis.Assumed, 300d, 0.3))]))], 0);

        Assert.True(assumed.MeanInterval(0.95).Width > 1.1 * counted.MeanInterval(0.95).Width);
    }

    [Fact]
    public void UnsampledOver_AnyLine_AgreesWithExpectedNumberAndChanceOfAny()
    {
        ApiaryPosterior posterior = ApiaryPosterior.FromJars([.. new[] { 14, 3, 0, 9, 22, 5, 7, 2 }.Select((m, i) => One($"colony {i}", m))], 32);

        foreach (double level in (ReadOnlySpan<double>)[0.1, 1d, 3d, 8d, 40d])
        {
            MiteLevel line = MiteLevel.Per100(level);
            ColonyCount over = posterior.UnsampledOver(line);
            Assert.Equal(32, over.Colonies);
            Assert.Equal(1d, Enumerable.Range(0, 33).Sum(n => over.ChanceOf(n).Value), 1e-9);
            Assert.Equal(posterior.ExpectedUnsampledOver(line), over.Mean, 1e-8);
            Assert.Equal(posterior.ChanceAnyUnsampledOver(line).Value, over.ChanceOfAtLeast(1).Value, 1e-9);
            Assert.True(over.Quantile(0.05) <= over.Quantile(0.95));
        }
    }

    [Fact]
    public void UnsampledOver_SharedUncertainty_IsWiderThanBinomial()
    {
        ApiaryPosterior posterior = ApiaryPosterior.FromJars([.. new[] { 14, 3, 0, 9 }.Select((m, i) => One($"colony {i}", m))], 32);
        ColonyCount over = posterior.UnsampledOver(Line);

        double p = over.Mean / 32d;
        double variance = Enumerable.Range(0, 33).Sum(n => over.ChanceOf(n).Value * (n - over.Mean) * (n - over.Mean));
        Assert.True(variance > 1.5 * 32d * p * (1d - p));
    }

    [Fact]
    public void Outlook_EveryColonySampled_SaysNothingOfUnsampledOnes()
    {
        ApiaryOutlook outlook = ApiaryPosterior.FromJars([One("Ash", 9), One("Elm", 30)], 0).Outlook(Line, 0.95);

        Assert.Equal(0d, outlook.ChanceAnyUnsampledOver.Value);
        Assert.Equal(0d, outlook.ExpectedUnsampledOver);
        Assert.Equal(39, outlook.MitesCounted);
        Assert.Equal(600d, outlook.BeesCounted);
        Assert.Equal(outlook.ExpectedSampledOver / 2d, outlook.ExpectedShareOver, 1e-12);
        Assert.True(outlook.MeanInterval.Contains(outlook.Mean));
    }

    /// <summary>Anything a keeper can enter gives finite, ordered numbers: no mites, one colony of 400, jars of 1 and of 100,000 bees.</summary>
    [Fact]
    public void FromJars_AnythingThatCanBeEntered_GivesFiniteOrderedNumbers()
    {
        Gen<JarCount> jar = Gen.Select(
            Gen.OneOf(Gen.Const(0), Gen.Int[0, 12], Gen.Int[0, 900]), Gen.OneOf(Gen.Int[1, 20], Gen.Int[150, 450], Gen.Int[1, 100_000]),
            Gen.OneOf(Gen.Const(0d), Gen.Double[0.01, 0.3], Gen.Double[0.3, 1d]), Gen.OneOf(Gen.Const(1d), Gen.Double[0.05, 1d]),
            (mites, bees, spread, recovery) => new JarCount(mites, spread > 0d ? BeeCount.Uncertain(BeeBasis.Assumed, bees, spread) : BeeCount.Counted(bees), recovery));
        Gen.Select(jar.Array[1, 4].Array[1, 9], Gen.OneOf(Gen.Const(0), Gen.Int[1, 60], Gen.Int[1, 100_000])).Sample(
            (colonies, unsampled) =>
            {
                ApiaryPosterior posterior = ApiaryPosterior.FromJars([.. colonies.Select((jars, i) => new ColonyJars($"colony {i}", jars))], unsampled);
                ApiaryOutlook outlook = posterior.Outlook(Line, 0.9);
                Ordered(outlook.MeanInterval);
                Ordered(posterior.PopulationMeanInterval(0.9));
                foreach (ColonyPosterior colony in posterior.Sampled)
                {
                    Ordered(colony.Interval(0.9));
                    Assert.True(colony.ChanceOver(Line) <= colony.ChanceOver(MiteLevel.Per100(1d)));
                }

                Assert.InRange(outlook.ExpectedUnsampledOver, 0d, unsampled);
                Assert.InRange(posterior.Spread.Median, 0d, ApiaryPrior.WidestSpread);
                Assert.True(posterior.Spread.Quantile(0.05) <= posterior.Spread.Quantile(0.95));
                Assert.True(double.IsFinite(posterior.Mean.Per100Bees));
            },
            iter: 150, threads: 2);

        static void Ordered(LevelInterval interval) => Assert.True(interval.Lower < interval.Upper, $"{interval.Lower} is not below {interval.Upper}.");
    }

    [Fact]
    public void FromJars_SameJarsTwice_GiveTheSameBits()
    {
        ColonyJars[] jars = [One("Ash", 9), One("Elm", 30), One("Oak", 0)];

        Assert.Equal(ApiaryPosterior.FromJars(jars, 9).Outlook(Line, 0.95), ApiaryPosterior.FromJars(jars, 9).Outlook(Line, 0.95));
    }

    [Fact]
    public void MostLikely_EqualColonies_SaysSo()
    {
        ClumpedFit fit = ClumpedCounts.MostLikely([One("Ash", 9), One("Elm", 9), One("Oak", 9)]);

        Assert.True(fit.IsEqualColonies);
        Assert.Equal(3d, fit.Mean.Per100Bees, 1e-5);
    }

    [Fact]
    public void MostLikely_OneColonyOrNoMites_Refuses()
    {
        Assert.Throws<ArgumentException>(() => ClumpedCounts.MostLikely([One("Ash", 9)]));
        Assert.Throws<ArgumentException>(() => ClumpedCounts.MostLikely([One("Ash", 0), One("Elm", 0)]));
    }

    private static ColonyJars One(string colony, int mites, int bees = 300) => new(colony, [new JarCount(mites, BeeCount.Counted(bees))]);
}
