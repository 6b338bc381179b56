using System.Globalization;
using Foundress.Science;
using Foundress.Science.Estimation;

namespace Foundress.Reference.Tests.Estimation.Apiary;

/// <summary>Growth between controls against Poisson regression by R's glm: growth.tsv, made by make-clumped-counts.R.</summary>
public class GrowthReferenceTests
{
    /// <summary>With next to flat priors the posterior of a colony with many mites is the normal one of the regression.</summary>
    [Fact]
    public void Of_NextToFlatPriors_AgreesWithPoissonRegression()
    {
        ReferenceTable table = ReferenceTable.Read("growth.tsv");
        List<ColonyCourse> courses = [];
        foreach (string[] row in table.Rows)
        {
            double[][] visits = [.. table.Text(row, "stretches").Split(',').Select(visit => visit.Split(':').Select(part => double.Parse(part, CultureInfo.InvariantCulture)).ToArray())];
            IReadOnlyList<CourseVisit>[] stretches =
            [
                .. visits.GroupBy(visit => visit[0]).Select(stretch =>
                    stretch.Select(visit => new CourseVisit(visit[1], [new JarCount((int)visit[2], BeeCount.Counted((int)visit[3]))])).ToArray()),
            ];
            courses.Add(new($"colony {courses.Count}", stretches));
        }

        GrowthRanking ranking = GrowthRanking.Of(courses, 0d, new GrowthPrior(1d, 0.5));
        Dictionary<string, ColonyGrowth> growths = ranking.Colonies.ToDictionary(colony => colony.Colony);
        for (int i = 0; i < table.Rows.Count; i++)
        {
            double growth = table.Number(table.Rows[i], "growth");
            double error = table.Number(table.Rows[i], "standardError");
            ColonyGrowth own = growths[$"colony {i}"];

            // The others still draw a little: with a spread s between colonies by error² / (error² + s²) of the distance.
            double drawn = error * error / ((error * error) + (ranking.BetweenColonies * ranking.BetweenColonies));
            double expected = growth + (drawn * (ranking.MeanGrowth - growth));
            Assert.Equal(expected, own.Mean, 0.1 * error);
            Assert.Equal(error * Math.Sqrt(1d - drawn), own.StandardDeviation, 0.05 * error);
        }
    }
}
