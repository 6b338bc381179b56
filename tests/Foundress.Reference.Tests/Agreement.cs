using System.Globalization;

namespace Foundress.Reference.Tests;

/// <summary>Collects relative errors over a table, so that a failure names its worst rows and not only the first.</summary>
internal sealed class Agreement(double tolerance)
{
    private readonly List<(double Error, string What)> _misses = [];

    public int Count { get; private set; }

    public double Worst { get; private set; }

    public static double Relative(double expected, double actual) =>
        expected == 0d ? Math.Abs(actual) : Math.Abs(actual - expected) / Math.Abs(expected);

    public void Check(double expected, double actual, string what)
    {
        double error = Relative(expected, actual);
        Count++;
        Worst = Math.Max(Worst, error);
        if (!(error <= tolerance))
            _misses.Add((error, string.Create(CultureInfo.InvariantCulture, $"{what}: expected {expected:R}, was {actual:R} (relative {error:E2})")));
    }

    public void AssertAll(int atLeast)
    {
        Assert.True(Count >= atLeast, $"Only {Count} values were compared; the table should give at least {atLeast}.");
        Assert.True(
            _misses.Count == 0,
            $"{_misses.Count} of {Count} values miss {tolerance:E0}:\n" + string.Join('\n', _misses.OrderByDescending(miss => miss.Error).Take(8).Select(miss => miss.What)));
        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Count} values, worst relative error {Worst:E2}"));
    }
}
