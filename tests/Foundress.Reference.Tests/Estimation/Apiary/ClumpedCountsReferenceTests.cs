using System.Globalization;
using Foundress.Science.Estimation;
using Foundress.Science;

namespace Foundress.Reference.Tests.Estimation.Apiary;

/// <summary>The negative binomial distribution against R's dnbinom and MASS::glm.nb: make-clumped-counts.R.</summary>
public class ClumpedCountsReferenceTests
{
    [Fact]
    public void LogMass_TableOfR_AgreesToElevenDigits()
    {
        ReferenceTable table = ReferenceTable.Read("negative-binomial.tsv");
        var agreement = new Agreement(1e-11);
        foreach (string[] row in table.Rows)
        {
            double actual = ClumpedCounts.LogMass(table.Whole(row, "mites"), table.Number(row, "mean"), table.Number(row, "shape"));
            agreement.Check(table.Number(row, "logMass"), actual, string.Join(' ', row));
        }

        agreement.AssertAll(250);
    }

    /// <summary>The fit by glm.nb is the mode of the posterior under flat priors of mean and spread, which is what MostLikely looks for.</summary>
    [Fact]
    public void MostLikely_FitsOfGlmNb_AgreesInMeanShapeAndLikelihood()
    {
        ReferenceTable table = ReferenceTable.Read("negative-binomial-fit.tsv");
        var place = new Agreement(2e-6);
        var height = new Agreement(1e-11);
        foreach (string[] row in table.Rows)
        {
            List<ColonyJars> jars = [];
            foreach (string jar in table.Text(row, "jars").Split(','))
            {
                int[] parts = [.. jar.Split(':').Select(part => int.Parse(part, CultureInfo.InvariantCulture))];
                jars.Add(new($"colony {jars.Count}", [new JarCount(parts[0], BeeCount.Counted(parts[1]))]));
            }

            ClumpedFit fit = ClumpedCounts.MostLikely(jars);
            string what = $"{jars.Count} colonies, theta {table.Text(row, "theta")}";
            place.Check(table.Number(row, "mean"), fit.Mean.PerBee, "mean of " + what);
            place.Check(table.Number(row, "theta"), fit.Shape, "theta of " + what);
            height.Check(table.Number(row, "logLikelihood"), fit.LogLikelihood, "ln likelihood of " + what);
        }

        place.AssertAll(72);
        height.AssertAll(36);
    }
}
