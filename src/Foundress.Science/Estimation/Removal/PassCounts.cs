namespace Foundress.Science.Estimation;

/// <summary>Mites counted in repeat passes over the same bees, first pass first. Immutable.</summary>
public sealed record PassCounts
{
    /// <summary>The most passes that are reckoned with.</summary>
    public const int MostPasses = 10;

    /// <summary>The most mites in one pass that are reckoned with: far more than any jar gives.</summary>
    public const int MostMites = 20_000;

    private readonly int[] _mites;

    /// <summary>Counts of one to <see cref="MostPasses"/> passes.</summary>
    /// <param name="mites">Mites of each pass, 0 to <see cref="MostMites"/>.</param>
    /// <exception cref="ArgumentException">There is no pass, or there are too many.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count is out of its range.</exception>
    public PassCounts(params IReadOnlyList<int> mites)
    {
        ArgumentNullException.ThrowIfNull(mites);
        if (mites.Count is < 1 or > MostPasses)
            throw new ArgumentException($"Give the mites of 1 to {MostPasses} passes over the same bees; {mites.Count} were given.", nameof(mites));
        foreach (int count in mites)
        {
            if (count is < 0 or > MostMites)
                throw new ArgumentOutOfRangeException(nameof(mites), count, $"The mites of one pass number 0 to {MostMites}.");
        }

        _mites = [.. mites];
        Summed = _mites.Sum();
        for (int i = 0; i < _mites.Length; i++)
        {
            Earlier += (_mites.Length - 1 - i) * _mites[i];
            Decline += (_mites.Length - 1 - (2 * i)) * _mites[i];
        }
    }

    /// <summary>Mites of each pass.</summary>
    public IReadOnlyList<int> Mites => _mites;

    /// <summary>Number of passes.</summary>
    public int Passes => _mites.Length;

    /// <summary>Mites of all passes together.</summary>
    public int Summed { get; }

    /// <summary>Σ (k - i) c(i): how often the mites already caught were no longer there to be caught.</summary>
    internal int Earlier { get; }

    /// <summary>Σ (k + 1 - 2 i) c(i): above 0 when earlier passes gave more than later ones.</summary>
    internal int Decline { get; }

    /// <summary>True when the counts are the same, pass by pass.</summary>
    public bool Equals(PassCounts? other) => other is not null && _mites.AsSpan().SequenceEqual(other._mites);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (int count in _mites)
            hash.Add(count);
        return hash.ToHashCode();
    }

    /// <summary>These passes and one more.</summary>
    internal PassCounts With(int mites) => new([.. _mites, mites]);
}
