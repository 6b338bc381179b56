namespace Foundress.Book.Rules;

/// <summary>What a jar can hold: beyond these a typing slip is certain (product choices, no source).</summary>
public static class JarLimits
{
    /// <summary>More mites than any jar was ever seen to hold.</summary>
    public const int MostMites = 10_000;

    /// <summary>More bees than a sampling jar holds.</summary>
    public const int MostBees = 5_000;

    /// <summary>More passes than anybody makes over the same bees.</summary>
    public const int MostPasses = 10;
}
