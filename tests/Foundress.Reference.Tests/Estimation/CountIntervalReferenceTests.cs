using Foundress.Science.Estimation;

namespace Foundress.Reference.Tests.Estimation;

/// <summary>Against R's poisson.test, prop.test and binom.test (Tables/count-intervals.tsv, made by Tables/make-count-intervals.R).</summary>
public class CountIntervalReferenceTests
{
    private static readonly ReferenceTable Table = ReferenceTable.Read("count-intervals.tsv");

    [Fact]
    public void ExactPoisson_EveryRowOfTheTable_AgreesTo1e9()
    {
        var agreement = new Agreement(1e-9);
        foreach (string[] row in Table.Rows)
            Check(agreement, row, "poisson", CountIntervals.ExactPoisson);
        agreement.AssertAll(1400);
    }

    [Fact]
    public void Wilson_EveryRowWithNoMoreMitesThanBees_AgreesTo1e9()
    {
        var agreement = new Agreement(1e-9);
        foreach (string[] row in Table.Rows.Where(IsProportion))
            Check(agreement, row, "wilson", CountIntervals.Wilson);
        agreement.AssertAll(1000);
    }

    [Fact]
    public void ClopperPearson_EveryRowWithNoMoreMitesThanBees_AgreesTo1e9()
    {
        var agreement = new Agreement(1e-9);
        foreach (string[] row in Table.Rows.Where(IsProportion))
            Check(agreement, row, "clopper", CountIntervals.ClopperPearson);
        agreement.AssertAll(1000);
    }

    private static bool IsProportion(string[] row) => Table.Whole(row, "mites") <= Table.Whole(row, "bees");

    private static void Check(Agreement agreement, string[] row, string columns, Func<int, int, double, LevelInterval> make)
    {
        LevelInterval interval = make(Table.Whole(row, "mites"), Table.Whole(row, "bees"), Table.Number(row, "confidence"));
        string what = columns + " " + string.Join(' ', row[..3]);
        agreement.Check(Table.Number(row, columns + "Lower") * 100d, interval.Lower.Per100Bees, what + " lower");
        agreement.Check(Table.Number(row, columns + "Upper") * 100d, interval.Upper.Per100Bees, what + " upper");
    }
}
