using Foundress.Science.Estimation;

namespace Foundress.Reference.Tests.Estimation.RepeatPasses;

/// <summary>Published worked examples of removal estimators, from fisheries; printed digits are what is compared.</summary>
public class PublishedRemovalTests
{
    // 18, 2: derived, not published. 79, 28: G. A. F. Seber 2002, The Estimation of Animal Abundance, example 7.4 (trout of Seber & Le
    // Cren). 72, 56: I. G. Cowx 1983, Fish. Manage. 14:67-82, page 75. The last two as quoted in the checks of the R package FSA.
    [Theory]
    [InlineData(18, 2, 20.25, 0.005, 0.889, 0.0005, 0.6289, 0.00005)]
    [InlineData(79, 28, 122, 0.5, 0.65, 0.005, 8.8, 0.05)]
    [InlineData(72, 56, 324, 0.5, 0.22, 0.005, 178.19, 0.005)]
    public void From_TwoPasses_GivesTheirFigures(int first, int second, double mites, double mitesWithin, double recovery, double recoveryWithin, double error, double errorWithin)
    {
        RemovalEstimate estimate = Removal.From(new PassCounts(first, second)).Estimate!;

        Assert.Equal(mites, estimate.Mites, mitesWithin);
        Assert.Equal(recovery, estimate.RecoveryOfPass, recoveryWithin);
        Assert.Equal(error, estimate.StandardError, errorWithin);
    }

    /// <summary>Sixteen samples with likelihood limits printed by Schnute 1983 for Moran's method (Tables/removal-trout.tsv).</summary>
    [Fact]
    public void From_FourPasses_GivesThePrintedNumbersAndLimits()
    {
        ReferenceTable table = ReferenceTable.Read("removal-trout.tsv");
        Assert.Equal(16, table.Rows.Count);
        foreach (string[] row in table.Rows)
        {
            int[] caught = [table.Whole(row, "first"), table.Whole(row, "second"), table.Whole(row, "third"), table.Whole(row, "fourth")];
            RemovalEstimate estimate = Removal.From(new PassCounts(caught)).Estimate!;
            RemovalInterval interval = estimate.Interval(0.95);

            Assert.Equal(table.Number(row, "number"), estimate.Mites, 0.0501);
            Assert.Equal(table.Number(row, "chance"), estimate.RecoveryOfPass, 0.00501);

            // Limits were searched by steps of 0.1 in print.
            Assert.Equal(table.Number(row, "lower"), interval.Lower, 0.1001);
            Assert.Equal(table.Number(row, "upper"), interval.Upper!.Value, 0.1001);
        }
    }

    /// <summary>
    /// F. L. Carle &amp; M. R. Strub 1978, Biometrics 34:621-630: catches 38, 26, 12 (number 91, standard error 9.7, chance 0.444 by
    /// their weighted estimator) and 5, 7, 8, where maximum likelihood gives nothing. Quoted in the checks of the R package FSA.
    /// </summary>
    [Fact]
    public void From_ThreePasses_LiesByTheWeightedEstimateOfTheSameCatches()
    {
        RemovalEstimate estimate = Removal.From(new PassCounts(38, 26, 12)).Estimate!;

        Assert.Equal(91d, estimate.Mites, 1.5);
        Assert.Equal(9.7, estimate.StandardError, 1.5);
        Assert.Equal(0.444, estimate.RecoveryOfPass, 0.015);
        Assert.Equal(RemovalRefusal.NoDecline, Removal.From(new PassCounts(5, 7, 8)).Refusal);
    }
}
