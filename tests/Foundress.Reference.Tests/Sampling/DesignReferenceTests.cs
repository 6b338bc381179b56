using Foundress.Science;
using Foundress.Science.Sampling;

namespace Foundress.Reference.Tests.Sampling;

/// <summary>Against R's phyper, dhyper, pnbinom and ppois and against epiR (tables made by Tables/make-design.R).</summary>
public class DesignReferenceTests
{
    [Fact]
    public void ChanceOfSome_EveryRowOfTheTable_AgreesTo1e10()
    {
        ReferenceTable table = ReferenceTable.Read("detection.tsv");
        var agreement = new Agreement(1e-10);
        foreach (string[] row in table.Rows)
        {
            SampleSize sample = new(table.Whole(row, "take"), table.Whole(row, "colonies"));
            double chance = ColonyDetection.ChanceOfSome(sample, table.Whole(row, "over"), table.Number(row, "sensitivity")).Value;
            agreement.Check(table.Number(row, "chance"), chance, string.Join(' ', row[..4]));

            // The usual approximation takes colonies over the line as missed independently, so it finds less often; far less in tiny apiaries.
            Assert.InRange(chance - table.Number(row, "approximate"), -1e-12, sample.OutOf >= 40 ? 0.03 : 0.24);
        }

        agreement.AssertAll(150);
    }

    [Fact]
    public void ColoniesFor_EveryRowOfTheTable_IsExactAndAtMostTheApproximateSize()
    {
        ReferenceTable table = ReferenceTable.Read("detection-sizes.tsv");
        Assert.Equal(80, table.Rows.Count);
        foreach (string[] row in table.Rows)
        {
            int colonies = table.Whole(row, "colonies");
            int take = ColonyDetection.ColoniesFor(colonies, table.Whole(row, "over"), Chance.Of(table.Number(row, "chance")))!.Value.Take;

            Assert.Equal(table.Whole(row, "take"), take);
            Assert.InRange(table.Whole(row, "rsu") - take, 0, 3);
            Assert.InRange(table.Whole(row, "ssdetect") - take, 0, 3);
        }
    }

    [Fact]
    public void ChanceJudgedOver_EveryRowOfTheTable_AgreesTo1e10()
    {
        ReferenceTable table = ReferenceTable.Read("decision.tsv");
        var large = new Agreement(1e-10);
        var whole = new Agreement(1e-10);
        foreach (string[] row in table.Rows)
        {
            int take = table.Whole(row, "take");
            int bees = table.Whole(row, "bees");
            MiteLevel level = MiteLevel.Per100(table.Number(row, "level"));
            MiteLevel line = MiteLevel.Per100(table.Number(row, "line"));
            double shape = table.Number(row, "shape");
            string what = string.Join(' ', row[..5]);

            // The largest apiary there can be is still finite: its correction, some 1e-8, is taken off the shape beforehand.
            double ofLargest = shape * (1d - ((double)take / int.MaxValue));
            large.Check(table.Number(row, "over"), PlanDecision.ChanceJudgedOver(new(new(take, int.MaxValue), 1, bees), level, ofLargest, line).Value, what);
            whole.Check(table.Number(row, "whole"), PlanDecision.ChanceJudgedOver(new(new(take, take), 1, bees), level, shape, line).Value, what);
        }

        large.AssertAll(170);
        whole.AssertAll(170);
    }

    // Derived from the formula, not published: eight colonies of a large apiary, 3 or 9 mites expected in a jar.
    [Theory]
    [InlineData(1, 0.5, 0.540)]
    [InlineData(1, 1, 0.408)]
    [InlineData(1, 2, 0.323)]
    [InlineData(3, 0.5, 0.514)]
    [InlineData(3, 1, 0.373)]
    [InlineData(3, 2, 0.276)]
    public void RelativeError_EightColonies_IsTheDerivedFigure(double per100, double shape, double error) =>
        Assert.Equal(error, PlanPrecision.RelativeError(new(new(8, int.MaxValue), 1, 300), MiteLevel.Per100(per100), shape), 5e-4);
}
