using Foundress.Science.Estimation;
using Foundress.Science;

namespace Foundress.Reference.Tests.Estimation.Apiary;

/// <summary>The change between two jars against R's F distribution: level-change.tsv, made by make-clumped-counts.R.</summary>
public class LevelChangeReferenceTests
{
    [Fact]
    public void OfColony_CountedJars_AgreesWithTheFDistribution()
    {
        ReferenceTable table = ReferenceTable.Read("level-change.tsv");
        var agreement = new Agreement(1e-9);
        foreach (string[] row in table.Rows)
        {
            LevelChange change = LevelChange.OfColony(
                [new JarCount(table.Whole(row, "earlierMites"), BeeCount.Counted(table.Whole(row, "earlierBees")))],
                [new JarCount(table.Whole(row, "laterMites"), BeeCount.Counted(table.Whole(row, "laterBees")))],
                21d);
            string what = string.Join(' ', row);
            agreement.Check(table.Number(row, "quantile"), change.RatioQuantile(table.Number(row, "p")), what);
            agreement.Check(table.Number(row, "chanceOver1"), change.ChanceGrown.Value, what);
        }

        agreement.AssertAll(90);
    }
}
