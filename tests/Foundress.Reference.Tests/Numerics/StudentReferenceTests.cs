using Foundress.Science.Numerics;

namespace Foundress.Reference.Tests.Numerics;

/// <summary>Against R's pt and qt (Tables/student.tsv, made by Tables/make-design.R).</summary>
public class StudentReferenceTests
{
    [Fact]
    public void Student_EveryRowOfTheTable_AgreesTo1e10()
    {
        ReferenceTable table = ReferenceTable.Read("student.tsv");
        var agreement = new Agreement(1e-10);
        foreach (string[] row in table.Rows)
        {
            double freedom = table.Number(row, "freedom");
            agreement.Check(table.Number(row, "lower"), StudentDistribution.Cumulative(table.Number(row, "t"), freedom), "pt " + string.Join(' ', row[..2]));
            double p = table.Number(row, "p");
            double quantile = StudentDistribution.Quantile(p, freedom);
            if (p != 0.5)
                agreement.Check(table.Number(row, "quantile"), quantile, "qt " + string.Join(' ', row[1], row[3]));
            else
                Assert.Equal(0d, quantile, 1e-12);
        }

        agreement.AssertAll(130);
    }
}
