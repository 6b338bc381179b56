using CsCheck;
using Foundress.Science.Judging;

namespace Foundress.Science.Tests.Judging;

public class JudgementTests
{
    private static readonly Certainty Usual = new(Chance.Of(0.1), Chance.Of(0.9));

    [Theory]
    [InlineData(0d, Standing.Below)]
    [InlineData(0.1, Standing.Below)]
    [InlineData(0.11, Standing.Unclear)]
    [InlineData(0.89, Standing.Unclear)]
    [InlineData(0.9, Standing.Above)]
    [InlineData(1d, Standing.Above)]
    public void Judge_ByTheChance_TakesTheLimitsIn(double chance, Standing expected) =>
        Assert.Equal(expected, Judgement.Judge(Chance.Of(chance), Usual));

    [Fact]
    public void Judge_RisingChance_NeverFalls() =>
        Gen.Select(Gen.Double[0d, 1d], Gen.Double[0d, 1d]).Sample((one, other) =>
            Judgement.Judge(Chance.Of(Math.Min(one, other)), Usual) <= Judgement.Judge(Chance.Of(Math.Max(one, other)), Usual));

    [Theory]
    [InlineData(0.5, 0.5)]
    [InlineData(0.9, 0.1)]
    public void Certainty_LimitsThatCross_AreRefused(double below, double above) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Certainty(Chance.Of(below), Chance.Of(above)));
}
