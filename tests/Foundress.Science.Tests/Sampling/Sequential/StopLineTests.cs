using CsCheck;
using Foundress.Science.Sampling;

namespace Foundress.Science.Tests.Sampling.Sequential;

public class StopLineTests
{
    /// <summary>On the line the standard error over the average is the wanted one, by the variance law itself.</summary>
    [Fact]
    public void Taylor_OnTheLine_HasTheWantedPrecision() =>
        Gen.Select(Gen.Double[0.05, 0.6], Gen.Double[0.3, 6d], Gen.Double[0.8, 1.9], Gen.Int[1, 60]).Sample(
            (precision, a, b, jars) =>
            {
                double average = StopLine.Taylor(precision, a, b, jars) / jars;
                Assert.Equal(precision, Math.Sqrt(a * Math.Pow(average, b) / jars) / average, 1e-9);
            },
            iter: 300, threads: 2);

    [Fact]
    public void Clumped_OnTheLine_HasTheWantedPrecision() =>
        Gen.Select(Gen.Double[0.05, 0.6], Gen.Double[0.3, 6d], Gen.Int[1, 200]).Sample(
            (precision, shape, jars) =>
            {
                if (StopLine.Clumped(precision, shape, jars) is not double mites)
                {
                    Assert.True(Math.Sqrt(1d / (shape * jars)) >= precision);
                    return;
                }

                double average = mites / jars;
                Assert.Equal(precision, Math.Sqrt(((1d / average) + (1d / shape)) / jars), 1e-9);
            },
            iter: 300, threads: 2);

    [Fact]
    public void StopLine_BadInput_Refuses()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => StopLine.Poisson(0d));
        Assert.Throws<ArgumentOutOfRangeException>(() => StopLine.Taylor(0.25, 0d, 1d, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => StopLine.Taylor(0.25, 1d, 2d, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => StopLine.Taylor(0.25, 1d, 1d, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => StopLine.Clumped(0.25, double.PositiveInfinity, 3));
    }
}
