using CsCheck;
using Foundress.Science.Verifying;

namespace Foundress.Science.Tests.Verifying;

public class EfficacyTestTests
{
    [Fact]
    public void Judge_AnyInterval_OneOfFourByTwoQuestions() =>
        Gen.Select(Gen.Double[-1, 1], Gen.Double[0, 1]).Sample((lower, width) =>
        {
            EfficacyTest test = new(0.95, 0.1, 0.9);
            double upper = Math.Min(1, lower + width);
            Verdict expected = (lower >= 0.85, upper >= 0.95) switch
            {
                (true, true) => Verdict.Worked,
                (true, false) => Verdict.Partly,
                (false, false) => Verdict.Failed,
                _ => Verdict.CannotTell,
            };
            Assert.Equal(expected, test.Judge(lower, upper));
        });

    [Theory]
    [InlineData(0, 0.1, 0.9)]
    [InlineData(1, 0.1, 0.9)]
    [InlineData(0.95, 0, 0.9)]
    [InlineData(0.95, 0.95, 0.9)]
    [InlineData(0.95, 0.1, 1)]
    [InlineData(double.NaN, 0.1, 0.9)]
    public void EfficacyTest_OutOfRange_Throws(double target, double margin, double confidence) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new EfficacyTest(target, margin, confidence));

    [Fact]
    public void Judge_LimitsInTheWrongOrder_Throws() => Assert.Throws<ArgumentOutOfRangeException>(() => new EfficacyTest(0.95, 0.1, 0.9).Judge(0.9, 0.8));

    [Fact]
    public void ToSettle_FewColonies_ManyMoreSettleIt()
    {
        EfficacyTest test = new(0.95, 0.1, 0.9);
        JarPair[] three = [EfficacyOfTests.Pair(10, 0), EfficacyOfTests.Pair(14, 1), EfficacyOfTests.Pair(8, 1)];
        Assert.Equal(Verdict.CannotTell, test.Judge(EfficacyOf.Group(three).Efficacy!));

        MoreJars more = MoreJars.ToSettle(three, test);

        Assert.NotNull(more.ColoniesNextTime);
        JarPair[] many = [.. Enumerable.Repeat(three, more.ColoniesNextTime.Value / 3).SelectMany(pairs => pairs)];
        Assert.NotEqual(Verdict.CannotTell, test.Judge(EfficacyOf.Group(many).Efficacy!));
        JarPair[] oneLess = many[3..];
        Assert.Equal(Verdict.CannotTell, test.Judge(EfficacyOf.Group(oneLess).Efficacy!));
    }

    [Fact]
    public void ToSettle_NothingToSettle_Throws() =>
        Assert.Throws<ArgumentException>(() => MoreJars.ToSettle([EfficacyOfTests.Pair(0, 0)], new EfficacyTest(0.95, 0.1, 0.9)));

    [Fact]
    public void ReductionIntervals_NoMiteAfter_SayWhy()
    {
        double[] before = [3, 5, 9];
        double[] none = [0, 0, 0];

        Assert.Contains("No mite was counted", Assert.Throws<ArgumentException>(() => ReductionIntervals.GammaPaired(before, none, 0.9)).Message, StringComparison.Ordinal);
        Assert.Contains("there are 3 and 2", Assert.Throws<ArgumentException>(() => ReductionIntervals.ColesPaired(before, [1, 2], 0.9)).Message, StringComparison.Ordinal);
        Assert.Contains("do not vary", Assert.Throws<ArgumentException>(() => ReductionIntervals.ColesUnpaired([4, 4], [2, 2], 0.9)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => ReductionIntervals.Binomial(4, 5, 0.9));
    }
}
