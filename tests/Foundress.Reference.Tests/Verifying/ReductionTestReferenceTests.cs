using Foundress.Science.Verifying;

namespace Foundress.Reference.Tests.Verifying;

/// <summary>Two published sets of counts from worm egg count reduction, and the classes their packages give them.</summary>
public class ReductionTestReferenceTests
{
    // Set A: the worked example of the bayescount vignette, whose classes are printed there. Set B: the sample data of eggCounts.
    private static readonly double[] BeforeA = [14, 22, 7, 29, 11, 1, 39, 6, 3, 0];
    private static readonly double[] AfterA = [0, 2, 1, 1, 2, 0, 5, 2, 0, 3];
    private static readonly double[] BeforeB = [0, 3500, 400, 150, 0, 0, 0, 200, 0, 400, 0, 2000, 2900, 9300];
    private static readonly double[] AfterB = [0, 200, 0, 50, 300, 0, 0, 0, 0, 0, 0, 0, 100, 800];

    [Fact]
    public void Intervals_PublishedCounts_AgreeWithR()
    {
        ReferenceTable table = ReferenceTable.Read("reduction-tests.tsv");
        Agreement agreement = new(1e-9);
        foreach (string[] row in table.Rows)
        {
            double[] before = table.Text(row, "set") == "A" ? BeforeA : BeforeB;
            double[] after = table.Text(row, "set") == "A" ? AfterA : AfterB;
            double confidence = table.Number(row, "confidence");
            string method = table.Text(row, "method");
            EfficacyInterval interval = method switch
            {
                "gamma-paired" => ReductionIntervals.GammaPaired(before, after, confidence),
                "gamma-unpaired" => ReductionIntervals.GammaUnpaired(before, after, confidence),
                "normal-paired" => ReductionIntervals.NormalPaired(before, after, confidence),
                "coles-unpaired" => ReductionIntervals.ColesUnpaired(before, after, confidence),
                "coles-paired" => ReductionIntervals.ColesPaired(before, after, confidence),
                _ => ReductionIntervals.Binomial((int)before.Sum(), (int)after.Sum(), confidence),
            };
            agreement.Check(1 - table.Number(row, "lower"), 1 - interval.Lower, $"{method} {confidence} lower");
            agreement.Check(1 - table.Number(row, "upper"), 1 - interval.Upper, $"{method} {confidence} upper");
        }

        agreement.AssertAll(48);
    }

    /// <summary>Means 13.2 and 1.6: 87.8788 %. Set B: 92.30769 %.</summary>
    [Fact]
    public void Reduction_PublishedCounts_IsByArithmetic()
    {
        Assert.Equal(87.8788, 100 * PointEfficacy.Reduction(BeforeA.Average(), AfterA.Average()).Share!.Value, 5e-5);
        Assert.Equal(92.30769, 100 * PointEfficacy.Reduction(BeforeB.Average(), AfterB.Average()).Share!.Value, 5e-6);
    }

    /// <summary>The vignette's classes for set A with target 95 % and lower limit 85 %: paired "Reduced" (1c), unpaired at 95 % "Inconclusive" (2b).</summary>
    [Fact]
    public void Judge_VignetteExample_GivesThePrintedClasses()
    {
        EfficacyTest test = new(0.95, 0.10, 0.9);

        Assert.Equal(Verdict.Failed, Judged(test, ReductionIntervals.GammaPaired(BeforeA, AfterA, 0.9)));
        Assert.Equal(Verdict.Failed, Judged(test, ReductionIntervals.ColesPaired(BeforeA, AfterA, 0.9)));
        Assert.Equal(Verdict.CannotTell, Judged(test, ReductionIntervals.GammaUnpaired(BeforeA, AfterA, 0.95)));
        Assert.Equal(Verdict.CannotTell, Judged(test, ReductionIntervals.ColesUnpaired(BeforeA, AfterA, 0.95)));
    }

    /// <summary>Dobson's binomial without a mite after, 40 before, 95 %: 91.396 to 99.938 (beta quantiles).</summary>
    [Fact]
    public void Binomial_NoMiteAfter_IsNotAHundred()
    {
        EfficacyInterval interval = ReductionIntervals.Binomial(40, 0, 0.95);

        Assert.Equal(91.396, 100 * interval.Lower, 5e-4);
        Assert.Equal(99.938, 100 * interval.Upper, 5e-4);
    }

    /// <summary>Kaplan et al. 2023 as coded in bayescount: 96/99.5 against 90/95 susceptible; 91/94 low resistant; 80/93 against 85/95 resistant; 80/97 inconclusive.</summary>
    [Theory]
    [InlineData(0.96, 0.995, 0.05, Verdict.Worked)]
    [InlineData(0.91, 0.94, 0.05, Verdict.Partly)]
    [InlineData(0.80, 0.93, 0.10, Verdict.Failed)]
    [InlineData(0.80, 0.97, 0.05, Verdict.CannotTell)]
    public void Judge_PublishedRules_GiveThePublishedClass(double lower, double upper, double margin, Verdict expected) =>
        Assert.Equal(expected, new EfficacyTest(0.95, margin, 0.9).Judge(lower, upper));

    /// <summary>
    /// Our own interval of set A, each count on 300 bees, lies with those of the paired methods and gives no other class than they or
    /// "cannot tell". It is wider: the last colony, with no mite before and three after, speaks for a large spread between colonies.
    /// </summary>
    [Fact]
    public void Group_PublishedCounts_LiesWithThePairedMethods()
    {
        JarPair[] pairs = [.. BeforeA.Zip(AfterA, (before, after) => JarPairs.Of((int)before, (int)after))];
        EfficacyPosterior efficacy = EfficacyOf.Group(pairs).Efficacy!;
        EfficacyInterval paired = ReductionIntervals.GammaPaired(BeforeA, AfterA, 0.9);
        EfficacyInterval own = efficacy.Interval(0.9);

        Assert.InRange(efficacy.Median, paired.Lower, paired.Upper);
        Assert.True(own.Contains(PointEfficacy.Reduction(13.2, 1.6).Share!.Value));
        Assert.InRange(own.Upper - own.Lower, 0.7 * (paired.Upper - paired.Lower), 3 * (paired.Upper - paired.Lower));
        Assert.Contains(new EfficacyTest(0.95, 0.1, 0.9).Judge(efficacy), new[] { Verdict.Failed, Verdict.CannotTell });
    }

    private static Verdict Judged(EfficacyTest test, EfficacyInterval interval) => test.Judge(interval.Lower, interval.Upper);
}
