namespace Foundress.Science.Estimation;

/// <summary>The jars of one sampled colony in one round: all are taken as counts of the same level and pooled.</summary>
public sealed record ColonyJars
{
    /// <summary>A sampled colony with its jars.</summary>
    /// <param name="colony">Name of the colony, unique among the colonies handed in together; not empty.</param>
    /// <param name="jars">At least one jar, all on the scale of one counting method.</param>
    /// <exception cref="ArgumentException">The name is empty or there is no jar.</exception>
    public ColonyJars(string colony, IReadOnlyList<JarCount> jars)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(colony);
        ArgumentNullException.ThrowIfNull(jars);
        if (jars.Count == 0)
            throw new ArgumentException($"Colony {colony} has no jar: give its jars, or count it among the colonies not sampled.", nameof(jars));
        Colony = colony;
        Jars = [.. jars];
    }

    /// <summary>Name of the colony.</summary>
    public string Colony { get; }

    /// <summary>Its jars, at least one.</summary>
    public IReadOnlyList<JarCount> Jars { get; }
}
