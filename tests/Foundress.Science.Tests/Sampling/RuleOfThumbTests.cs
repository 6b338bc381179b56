using CsCheck;
using Foundress.Science.Sampling;

namespace Foundress.Science.Tests.Sampling;

public class RuleOfThumbTests
{
    // Common practice, no source: fewer than 10 colonies all; one larger apiary 8; several apiaries 3 to 5 % of all colonies;
    // four times a year; again within a week after a control ended.
    private static readonly RuleOfThumb Usual = new(10, 8, 0.03, 0.05, 4, 7);

    // common practice, no source
    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 1)]
    [InlineData(7, 7)]
    [InlineData(9, 9)]
    [InlineData(10, 8)]
    [InlineData(24, 8)]
    [InlineData(400, 8)]
    public void ForApiary_CommonPractice_TakesAllOrEight(int colonies, int take) =>
        Assert.Equal(new SampleSize(take, colonies), Usual.ForApiary(colonies));

    // common practice, no source; the floors (one in each apiary, no fewer than one apiary of that size) are this project's.
    [Theory]
    [InlineData(new[] { 500, 300, 200 }, 30, 50, new[] { 25, 15, 10 })]
    [InlineData(new[] { 40, 40, 20 }, 8, 8, new[] { 3, 3, 2 })]
    [InlineData(new[] { 15, 15, 15 }, 8, 8, new[] { 3, 3, 2 })]
    [InlineData(new[] { 3, 4 }, 7, 7, new[] { 3, 4 })]
    [InlineData(new[] { 12 }, 8, 8, new[] { 8 })]
    [InlineData(new[] { 12, 0 }, 8, 8, new[] { 8, 0 })]
    [InlineData(new[] { 0, 0 }, 0, 0, new[] { 0, 0 })]
    [InlineData(new[] { 100, 1, 1, 1, 1, 1, 1, 1, 1, 1 }, 10, 10, new[] { 1, 1, 1, 1, 1, 1, 1, 1, 1, 1 })]
    public void ForOperation_CommonPractice_TakesAShareOfAll(int[] colonies, int low, int high, int[] shares)
    {
        OperationSample sample = Usual.ForOperation(colonies);

        Assert.Equal(low, sample.Low.Take);
        Assert.Equal(high, sample.High.Take);
        Assert.Equal(shares, sample.PerApiary.Select(size => size.Take));
    }

    [Fact]
    public void ForOperation_AnyOperation_SharesOutExactlyAndMissesNoApiary() =>
        Gen.Int[0, 300].Array[1, 30].Sample(colonies =>
        {
            OperationSample sample = Usual.ForOperation(colonies);
            return sample.PerApiary.Sum(size => size.Take) == sample.High.Take
                && sample.PerApiary.Select(size => size.OutOf).SequenceEqual(colonies)
                && sample.PerApiary.All(size => size.OutOf == 0 || size.Take >= 1)
                && sample.Low.Take <= sample.High.Take
                && sample.High.Take >= Usual.ForApiary(colonies.Sum()).Take;
        });

    [Fact]
    public void ForApiary_NegativeColonies_IsRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => Usual.ForApiary(-1));

    [Fact]
    public void ForOperation_NoApiary_IsRefused() => Assert.Throws<ArgumentException>(() => Usual.ForOperation([]));

    [Theory]
    [InlineData(0, 8, 0.03, 0.05, 4, 7)]
    [InlineData(10, 11, 0.03, 0.05, 4, 7)]
    [InlineData(10, 8, 0.05, 0.03, 4, 7)]
    [InlineData(10, 8, 0, 0.05, 4, 7)]
    [InlineData(10, 8, 0.03, 1.5, 4, 7)]
    [InlineData(10, 8, 0.03, 0.05, 0, 7)]
    [InlineData(10, 8, 0.03, 0.05, 4, 0)]
    public void Constructor_ImpossibleFigures_AreRefused(int all, int one, double low, double high, int times, int days) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new RuleOfThumb(all, one, low, high, times, days));
}
