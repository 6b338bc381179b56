namespace Foundress.Science.Sampling;

/// <summary>How many colonies to sample, out of how many.</summary>
public readonly record struct SampleSize
{
    /// <summary>A sample size.</summary>
    /// <param name="take">Colonies to sample, 0 to <paramref name="outOf"/>.</param>
    /// <param name="outOf">Colonies there are, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public SampleSize(int take, int outOf)
    {
        if (outOf < 0)
            throw new ArgumentOutOfRangeException(nameof(outOf), outOf, "The number of colonies is 0 or more.");
        if (take < 0 || take > outOf)
            throw new ArgumentOutOfRangeException(nameof(take), take, $"A sample of {outOf} colonies takes between 0 and {outOf}.");
        (Take, OutOf) = (take, outOf);
    }

    /// <summary>Colonies to sample.</summary>
    public int Take { get; }

    /// <summary>Colonies there are.</summary>
    public int OutOf { get; }

    /// <summary>True when every colony is sampled.</summary>
    public bool All => Take == OutOf;
}
