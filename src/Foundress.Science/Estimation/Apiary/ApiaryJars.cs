namespace Foundress.Science.Estimation;

/// <summary>One apiary of an operation in a round.</summary>
public sealed record ApiaryJars
{
    /// <summary>An apiary with the colonies sampled in it.</summary>
    /// <param name="apiary">Name, unique among the apiaries handed in together; not empty.</param>
    /// <param name="sampled">Its sampled colonies; may be empty when it was not visited.</param>
    /// <param name="unsampled">Number of its other colonies, 0 or more.</param>
    /// <exception cref="ArgumentException">The name is empty, or the apiary has no colony at all.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="unsampled"/> is out of its range.</exception>
    public ApiaryJars(string apiary, IReadOnlyList<ColonyJars> sampled, int unsampled)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(apiary);
        ArgumentNullException.ThrowIfNull(sampled);
        if (unsampled is < 0 or > ApiaryPosterior.MostUnsampled)
            throw new ArgumentOutOfRangeException(nameof(unsampled), unsampled, $"The number of unsampled colonies of apiary {apiary} lies between 0 and {ApiaryPosterior.MostUnsampled}.");
        if (sampled.Count + unsampled == 0)
            throw new ArgumentException($"Apiary {apiary} has no colony: leave it out.", nameof(sampled));
        (Apiary, Sampled, Unsampled) = (apiary, [.. sampled], unsampled);
    }

    /// <summary>Name of the apiary.</summary>
    public string Apiary { get; }

    /// <summary>Its sampled colonies.</summary>
    public IReadOnlyList<ColonyJars> Sampled { get; }

    /// <summary>Number of its other colonies.</summary>
    public int Unsampled { get; }
}
