namespace Foundress.Science.Sampling;

/// <summary>How many colonies are sampled, out of how many, with how many jars each and how many bees to a jar.</summary>
public readonly record struct SamplingPlan
{
    /// <summary>A plan.</summary>
    /// <param name="sample">Colonies to sample, at least one, and colonies there are.</param>
    /// <param name="jarsPerColony">Jars taken in each sampled colony, at least 1.</param>
    /// <param name="beesPerJar">Bees in a jar, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public SamplingPlan(SampleSize sample, int jarsPerColony, int beesPerJar)
    {
        if (sample.Take < 1)
            throw new ArgumentOutOfRangeException(nameof(sample), sample, "A sampling plan takes at least one colony.");
        if (jarsPerColony < 1)
            throw new ArgumentOutOfRangeException(nameof(jarsPerColony), jarsPerColony, "Each sampled colony gives at least one jar.");
        if (beesPerJar < 1)
            throw new ArgumentOutOfRangeException(nameof(beesPerJar), beesPerJar, "A jar holds at least one bee.");
        (Sample, JarsPerColony, BeesPerJar) = (sample, jarsPerColony, beesPerJar);
    }

    /// <summary>Colonies to sample and colonies there are.</summary>
    public SampleSize Sample { get; }

    /// <summary>Jars taken in each sampled colony.</summary>
    public int JarsPerColony { get; }

    /// <summary>Bees in a jar.</summary>
    public int BeesPerJar { get; }

    /// <summary>Bees of one colony.</summary>
    internal double BeesPerColony => (double)JarsPerColony * BeesPerJar;

    /// <summary>Share of the colonies that is not sampled: 0 when all are.</summary>
    internal double Unsampled => 1d - ((double)Sample.Take / Sample.OutOf);

    internal static void CheckShape(double shape)
    {
        if (!(shape > 0d))
            throw new ArgumentOutOfRangeException(nameof(shape), shape, "The shape k of the spread between colonies lies above 0; infinity stands for colonies all alike.");
    }
}
