using Foundress.Science.Estimation;
using Foundress.Science.Numerics;

namespace Foundress.Science.Tests.Estimation.Apiary;

/// <summary>Jars drawn from the model: levels gamma around a mean, mites Poisson given level and bees.</summary>
internal sealed class SimulatedApiary
{
    private SimulatedApiary(ColonyJars[] jars, double[] levels) => (Jars, Levels) = (jars, levels);

    public ColonyJars[] Jars { get; }

    /// <summary>True levels per bee, the sampled colonies first.</summary>
    public double[] Levels { get; }

    public MiteLevel Average => MiteLevel.FromPerBee(Levels.Average());

    public static SimulatedApiary Draw(SeededGenerator generator, double meanPerBee, double spread, int sampled, int unsampled, int jarsEach, double logSpread)
    {
        double shape = 1d / (spread * spread);
        double[] levels = new double[sampled + unsampled];
        for (int i = 0; i < levels.Length; i++)
            levels[i] = generator.NextGamma(shape) * meanPerBee / shape;

        ColonyJars[] jars = new ColonyJars[sampled];
        for (int i = 0; i < sampled; i++)
        {
            JarCount[] own = new JarCount[jarsEach];
            for (int j = 0; j < jarsEach; j++)
            {
                double bees = logSpread > 0d ? 300d * PortableFunctions.Exp(logSpread * generator.NextNormal()) : 300d;
                BeeCount told = logSpread > 0d ? BeeCount.Uncertain(BeeBasis.Assumed, 300d, logSpread) : BeeCount.Counted(300);
                own[j] = new(generator.NextPoisson(Math.Min(1e8, bees * levels[i])), told);
            }

            jars[i] = new($"colony {i}", own);
        }

        return new(jars, levels);
    }
}
