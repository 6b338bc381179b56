using CsCheck;
using Foundress.Science.Dynamics.Bees;

namespace Foundress.Science.Tests.Dynamics.Bees;

/// <summary>
/// Against the textbook way: the conditional mean and variance of a normal vector with covariance V exp(-|s - t| / memory),
/// by solving the normal equations outright.
/// </summary>
public class DeviationSmootherTests
{
    private const int Days = 60;

    [Fact]
    public void Fill_AnySightings_IsTheConditionalNormal() =>
        Gen.Select(Gen.Select(Gen.Int[0, Days - 1], Gen.Double[-2, 2], Gen.Double[0.01, 1]).Array[1, 6], Gen.Double[0.05, 1], Gen.Double[3, 80]).Sample((raw, variance, memory) =>
        {
            DeviationSeen[] seen = [.. raw.OrderBy(one => one.Item1).Select(one => new DeviationSeen(one.Item1, one.Item2, one.Item3))];
            var (means, variances) = (new double[Days], new double[Days]);
            DeviationSmoother.Fill(seen, variance, memory, new double[Days], means, variances);
            for (int day = 0; day < Days; day += 7)
            {
                var (mean, spread) = Conditional(seen, variance, memory, day);
                Assert.Equal(mean, means[day], 8);
                Assert.Equal(spread, variances[day], 8);
            }
        });

    [Fact]
    public void Fill_NothingSeen_StaysAtTheVariance()
    {
        var (means, variances) = (new double[Days], new double[Days]);

        DeviationSmoother.Fill([], 0.16, 30, new double[Days], means, variances);

        Assert.All(means, mean => Assert.Equal(0d, mean));
        Assert.All(variances, spread => Assert.Equal(0.16, spread, 12));
    }

    [Fact]
    public void Fill_SomethingUnseenHappened_IsWiderAfterItAndForgetsIt()
    {
        var unseen = new double[Days];
        unseen[20] = 0.25;
        var (means, variances) = (new double[Days], new double[Days]);

        DeviationSmoother.Fill([], 0.16, 10, unseen, means, variances);

        Assert.Equal(0.16, variances[19], 12);
        Assert.Equal(0.41, variances[20], 12);
        Assert.InRange(variances[59], 0.16, 0.1602);
    }

    [Fact]
    public void Fill_SightingsOutOfOrder_AreRefused() =>
        Assert.Throws<ArgumentException>(() => DeviationSmoother.Fill([new(5, 0, 1), new(4, 0, 1)], 1, 1, new double[9], new double[9], new double[9]));

    private static (double Mean, double Variance) Conditional(DeviationSeen[] seen, double variance, double memory, int day)
    {
        int n = seen.Length;
        double Covariance(int one, int other) => variance * Math.Exp(-Math.Abs(one - other) / memory);
        var matrix = new double[n, n + 2];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
                matrix[i, j] = Covariance(seen[i].Day, seen[j].Day) + (i == j ? seen[i].Variance : 0);
            matrix[i, n] = seen[i].Deviation;
            matrix[i, n + 1] = Covariance(seen[i].Day, day);
        }

        // Gauss-Jordan; the matrix is positive definite.
        for (int i = 0; i < n; i++)
        {
            double pivot = matrix[i, i];
            for (int j = 0; j < n + 2; j++)
                matrix[i, j] /= pivot;
            for (int k = 0; k < n; k++)
            {
                double factor = matrix[k, i];
                for (int j = 0; k != i && j < n + 2; j++)
                    matrix[k, j] -= factor * matrix[i, j];
            }
        }

        double mean = 0, explained = 0;
        for (int i = 0; i < n; i++)
        {
            mean += Covariance(seen[i].Day, day) * matrix[i, n];
            explained += Covariance(seen[i].Day, day) * matrix[i, n + 1];
        }

        return (mean, variance - explained);
    }
}
