namespace Foundress.Science.Estimation;

/// <summary>What a decision about a whole apiary rests on, with the numbers it was worked from. It is data, not advice.</summary>
public sealed record ApiaryOutlook
{
    /// <summary>The line that everything below refers to.</summary>
    public required MiteLevel Line { get; init; }

    /// <summary>Colonies with at least one jar.</summary>
    public required int SampledColonies { get; init; }

    /// <summary>Colonies without a jar.</summary>
    public required int UnsampledColonies { get; init; }

    /// <summary>Mites counted in all jars together.</summary>
    public required long MitesCounted { get; init; }

    /// <summary>Bees in all jars together (medians where they were not counted).</summary>
    public required double BeesCounted { get; init; }

    /// <summary>Mean level of all the apiary's colonies.</summary>
    public required MiteLevel Mean { get; init; }

    /// <summary>Its interval.</summary>
    public required LevelInterval MeanInterval { get; init; }

    /// <summary>The chance that the mean is over the line.</summary>
    public required Chance ChanceMeanOver { get; init; }

    /// <summary>Expected number of sampled colonies over the line.</summary>
    public required double ExpectedSampledOver { get; init; }

    /// <summary>Expected number of unsampled colonies over the line.</summary>
    public required double ExpectedUnsampledOver { get; init; }

    /// <summary>The chance that at least one sampled colony is over, their levels taken as independent given the jars.</summary>
    public required Chance ChanceAnySampledOver { get; init; }

    /// <summary>The chance that at least one unsampled colony is over.</summary>
    public required Chance ChanceAnyUnsampledOver { get; init; }

    /// <summary>Median of the spread between colonies (standard deviation over mean).</summary>
    public required double SpreadMedian { get; init; }

    /// <summary>False when what is said about unsampled colonies rests on the prior: see <see cref="ApiaryPosterior.SpreadIdentified"/>.</summary>
    public required bool SpreadIdentified { get; init; }

    /// <summary>Expected number of colonies over the line in the whole apiary.</summary>
    public double ExpectedOver => ExpectedSampledOver + ExpectedUnsampledOver;

    /// <summary>Expected share of the apiary's colonies over the line, 0 to 1.</summary>
    public double ExpectedShareOver => ExpectedOver / (SampledColonies + UnsampledColonies);
}
