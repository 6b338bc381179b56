using CsCheck;
using Foundress.Science.Estimation;
using Foundress.Science.Numerics;

namespace Foundress.Science.Tests.Estimation.Jars;

public class WeighingTests
{
    private static readonly Weighing Kitchen = new(0.12, 0.05, 0.3);

    [Fact]
    public void Bees_SubSampleFromTheJar_IsTheDeltaMethod()
    {
        // 100 bees of 12 g: 0.12 g a bee, so 36 g are 300 bees. 0.12² (1/100 - 1/300) + 0.3² (1/36² + 1/12²).
        BeeCount bees = Kitchen.Bees(36d, new WeighedSample(100, 12d, fromJar: true));

        Assert.Equal(300d, bees.Bees, 1e-9);
        Assert.Equal(BeeBasis.Weighed, bees.Basis);
        Assert.Equal(Math.Sqrt(0.000096 + (0.09 * ((1d / 1296d) + (1d / 144d)))), bees.LogSpread, 1e-12);
    }

    [Fact]
    public void Bees_WholeJarCounted_HasTheScalesErrorOnly() =>
        Assert.Equal(0d, new Weighing(0.12, 0.05, 0d).Bees(36d, new WeighedSample(300, 36d, fromJar: true)).LogSpread, 1e-9);

    [Fact]
    public void Bees_LargerSubSample_NarrowsThem() =>
        Gen.Select(Gen.Int[10, 250], Gen.Double[0.081, 0.151]).Sample(
            (counted, grams) =>
            {
                double jar = 300d * grams;
                BeeCount few = Kitchen.Bees(jar, new WeighedSample(counted, counted * grams, fromJar: true));
                BeeCount more = Kitchen.Bees(jar, new WeighedSample(counted + 10, (counted + 10) * grams, fromJar: true));
                BeeCount other = Kitchen.Bees(jar, new WeighedSample(counted, counted * grams, fromJar: false));
                Assert.Equal(300d, few.Bees, 1e-6);
                Assert.True(more.LogSpread < few.LogSpread);
                Assert.True(other.LogSpread > few.LogSpread);
            },
            iter: 300, threads: 2);

    /// <summary>Bees drawn one by one with gamma weights: the interval of the bee count holds the true number as often as it says.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Bees_WeighedBeesSimulated_CoverTheTrueNumber(bool fromJar)
    {
        const int Runs = 1500;
        const double Spread = 0.2;
        SeededGenerator generator = SeededGenerator.ForPart(17, fromJar ? "in" : "out");
        Weighing weighing = new(Spread, 0.04, 0.1);
        int held = 0;
        for (int run = 0; run < Runs; run++)
        {
            double place = fromJar ? 1d : Math.Exp(0.04 * generator.NextNormal());
            double sub = Weight(40) * place;
            double jar = fromJar ? sub + Weight(260) : Weight(300) * Math.Exp(0.04 * generator.NextNormal());
            BeeCount bees = weighing.Bees(jar + (0.1 * generator.NextNormal()), new WeighedSample(40, sub + (0.1 * generator.NextNormal()), fromJar));
            held += Math.Abs(Math.Log(bees.Bees / 300d)) < 1.96 * bees.LogSpread ? 1 : 0;
        }

        Assert.InRange((double)held / Runs, 0.932, 0.968);

        double Weight(int bees)
        {
            double shape = 1d / (Spread * Spread);
            return 0.12 / shape * generator.NextGamma(shape * bees);
        }
    }

    [Fact]
    public void Bees_BadInput_Refuses()
    {
        WeighedSample sample = new(100, 12d, fromJar: true);
        Assert.Throws<ArgumentOutOfRangeException>(() => Kitchen.Bees(0d, sample));
        Assert.Throws<ArgumentOutOfRangeException>(() => Kitchen.Bees(11d, sample));
        Assert.Throws<ArgumentOutOfRangeException>(() => Kitchen.Bees(0.036, new WeighedSample(100, 12d, fromJar: false)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Kitchen.Bees(36d, default));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Weighing(0.1, 0d, 50d).Bees(36d, sample));
        Assert.Throws<ArgumentOutOfRangeException>(() => new WeighedSample(1, 0.1, true));
        Assert.Throws<ArgumentOutOfRangeException>(() => new WeighedSample(10, 0d, true));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Weighing(0d, 0d, 0d));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Weighing(0.1, -1d, 0d));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Weighing(0.1, 0d, double.NaN));
    }
}
