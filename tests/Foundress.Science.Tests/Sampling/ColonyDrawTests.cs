using CsCheck;
using Foundress.Science.Numerics;
using Foundress.Science.Sampling;

namespace Foundress.Science.Tests.Sampling;

public class ColonyDrawTests
{
    private static readonly Stratum Home = new("Home", [.. Enumerable.Range(1, 24).Select(i => $"H{i:00}")], 8);
    private static readonly Stratum Hill = new("Hill", ["A", "B", "C", "D", "E"], 5);

    [Fact]
    public void Draw_OneSeed_AlwaysDrawsTheseColonies()
    {
        // Repeated by hand in another language from the published steps (SplitMix64, FNV-1a, xoshiro256**, multiply and reject,
        // shuffle from the front): a draw printed last year must come out the same this year.
        StratumDraw drawn = Assert.Single(ColonyDraw.Draw([Home], 20240611).Strata);

        Assert.Equal("H15 H17 H02 H06 H07 H24 H11 H13", string.Join(' ', drawn.Chosen));
    }

    [Fact]
    public void Draw_ColoniesAndApiariesInAnyOrder_IsTheSame() =>
        Gen.Select(Gen.ULong, Gen.Shuffle(Home.Colonies.ToArray())).Sample((seed, shuffled) =>
            Same(ColonyDraw.Draw([Home, Hill], seed), ColonyDraw.Draw([Hill, Home with { Colonies = shuffled }], seed)));

    [Fact]
    public void Draw_AnotherApiaryComes_LeavesTheFirstAsItWas() =>
        Gen.ULong.Sample(seed => ColonyDraw.Draw([Home], seed).Strata[0].Chosen
            .SequenceEqual(ColonyDraw.Draw([Hill, Home], seed).Strata.Single(drawn => drawn.Apiary == "Home").Chosen));

    [Fact]
    public void Draw_MoreTaken_OnlyMovesReservesUp() =>
        Gen.Select(Gen.ULong, Gen.Int[0, 24]).Sample((seed, take) =>
        {
            StratumDraw some = ColonyDraw.Draw([Home with { Take = take }], seed).Strata[0];
            StratumDraw all = ColonyDraw.Draw([Home with { Take = 24 }], seed).Strata[0];
            return some.Chosen.Count == take && some.Chosen.Concat(some.Reserves).SequenceEqual(all.Chosen);
        });

    [Fact]
    public void Draw_AnySeed_UsesEveryColonyOnce() =>
        Gen.ULong.Sample(seed =>
        {
            StratumDraw drawn = ColonyDraw.Draw([Home], seed).Strata[0];
            return drawn.Chosen.Concat(drawn.Reserves).Order(StringComparer.Ordinal).SequenceEqual(Home.Colonies);
        });

    [Fact]
    public void Draw_ManySeeds_ChoosesEveryPairEquallyOften()
    {
        // Two of six colonies: fifteen pairs, each with the same chance.
        const int Seeds = 30000;
        var stratum = new Stratum("Edge", ["a", "b", "c", "d", "e", "f"], 2);
        var seen = new Dictionary<string, int>();
        for (ulong seed = 0; seed < Seeds; seed++)
        {
            string pair = string.Concat(ColonyDraw.Draw([stratum], seed).Strata[0].Chosen.Order(StringComparer.Ordinal));
            seen[pair] = seen.GetValueOrDefault(pair) + 1;
        }

        Assert.Equal(15, seen.Count);
        double statistic = seen.Values.Sum(count => Math.Pow(count - (Seeds / 15d), 2) / (Seeds / 15d));
        Assert.True(GammaFunctions.Upper(7d, statistic / 2d) > 1e-4, $"chi-squared {statistic} with 14 degrees of freedom");
    }

    [Fact]
    public void Draw_TooManyTaken_SaysHowManyThereAre() =>
        Assert.Contains("24 colonies", Assert.Throws<ArgumentOutOfRangeException>(() => ColonyDraw.Draw([Home with { Take = 25 }], 1)).Message, StringComparison.Ordinal);

    [Fact]
    public void Draw_ColonyTwice_NamesIt() =>
        Assert.Contains("'B'", Assert.Throws<ArgumentException>(() => ColonyDraw.Draw([new("Hill", ["A", "B", "B"], 1)], 1)).Message, StringComparison.Ordinal);

    [Fact]
    public void Draw_ApiaryTwice_NamesIt() =>
        Assert.Contains("'Hill'", Assert.Throws<ArgumentException>(() => ColonyDraw.Draw([Hill, Hill], 1)).Message, StringComparison.Ordinal);

    [Fact]
    public void Draw_NoApiary_IsRefused() => Assert.Throws<ArgumentException>(() => ColonyDraw.Draw([], 1));

    private static bool Same(Draw one, Draw other) =>
        one.Strata.Zip(other.Strata).All(pair => pair.First.Apiary == pair.Second.Apiary
            && pair.First.Chosen.SequenceEqual(pair.Second.Chosen) && pair.First.Reserves.SequenceEqual(pair.Second.Reserves));
}
