using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>
/// The distribution of the mean level of the colonies that stand in an apiary. In each cell of the grid it is the sum of the
/// sampled colonies, close to one gamma distribution, and of the unsampled ones, exactly another; where the second is
/// skewed it is cut into slices, since the two together are then not like a gamma distribution at all.
/// </summary>
internal static class ApiaryAverage
{
    private const int Slices = 12;
    private const int Bins = 28;

    // Sums of gamma variables of this shape or more are near enough to one gamma variable.
    private const double PlainShape = 30d;

    public static GammaComponents Of(ApiaryGrid grid, int sampled, int unsampled)
    {
        double[] sums = new double[grid.Cells];
        double[] sumVariances = new double[grid.Cells];
        double[] slopes = new double[grid.Cells];
        if (sampled > 0)
            grid.SumMoments(sums, sumVariances, slopes);

        (double Chance, double Mean, double Variance)[][] slices = new (double, double, double)[SpreadRule.Count][];
        for (int c = 0; c < SpreadRule.Count; c++)
            slices[c] = SlicesOf(unsampled / (grid.Rule.Nodes[c] * grid.Rule.Nodes[c]), grid.Rule.Nodes[c], unsampled);

        double colonies = sampled + (double)unsampled;
        var chances = new List<double>(grid.Cells);
        var means = new List<double>(grid.Cells);
        var variances = new List<double>(grid.Cells);
        var groups = new List<int>(grid.Cells);
        for (int cell = 0; cell < grid.Cells; cell++)
        {
            double level = Math.Exp(grid.LogMeans[cell]);
            int c = grid.SpreadNode(cell);
            foreach ((double chance, double mean, double variance) in slices[c])
            {
                double slope = slopes[cell] + (level * mean);
                chances.Add(grid.Weights[cell] * chance);
                means.Add((sums[cell] + (level * mean)) / colonies);
                variances.Add((sumVariances[cell] + (level * level * variance) + (slope * slope * grid.WidthVariance(cell))) / (colonies * colonies));
                groups.Add(c * GammaComponents.SpreadGroups / SpreadRule.Count);
            }
        }

        return GammaComponents.Merge([.. chances], [.. means], [.. variances], [.. groups], Bins);
    }

    /// <summary>The sum of unsampled levels over the apiary's mean: slices of equal chance with their means and variances.</summary>
    private static (double Chance, double Mean, double Variance)[] SlicesOf(double shape, double spread, int unsampled)
    {
        if (unsampled == 0)
            return [(1d, 0d, 0d)];
        if (shape >= PlainShape)
            return [(1d, unsampled, unsampled * spread * spread)];

        // Moments of a gamma variable between two points are chances of gamma variables of shapes one and two higher.
        (double, double, double)[] slices = new (double, double, double)[Slices];
        double scale = spread * spread;
        double above0 = 1d;
        double above1 = 1d;
        double above2 = 1d;
        for (int i = 0; i < Slices; i++)
        {
            double next0 = 1d - ((i + 1d) / Slices);
            double next1 = 0d;
            double next2 = 0d;
            if (i < Slices - 1)
            {
                double edge = GammaFunctions.InverseUpper(shape, next0);
                next1 = GammaFunctions.Upper(shape + 1d, edge);
                next2 = GammaFunctions.Upper(shape + 2d, edge);
            }

            double chance = above0 - next0;
            double mean = shape * (above1 - next1) / chance;
            double square = shape * (shape + 1d) * (above2 - next2) / chance;
            slices[i] = (chance, scale * mean, scale * scale * Math.Max(0d, square - (mean * mean)));
            (above0, above1, above2) = (next0, next1, next2);
        }

        return slices;
    }
}
