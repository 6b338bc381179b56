using System.Text.Json.Serialization;
using Foundress.Science;

namespace Foundress.Book.Records;

/// <summary>How many bees were in a jar, as it was known when the jar was recorded.</summary>
/// <param name="Basis">Counted, weighed or assumed.</param>
/// <param name="Count">The number: exact and whole when counted, otherwise the most likely number. 1 to 20,000.</param>
/// <param name="LogSpread">Standard deviation of the natural logarithm of the number; 0 when counted, else up to 1.</param>
/// <param name="Measure">Id of the measure an assumed number stands for, from the knowledge files.</param>
/// <param name="Grams">Weight of the bees, when weighed.</param>
/// <param name="MilligramsPerBee">Weight of one bee the number was worked out with, when weighed.</param>
public sealed record JarBees(
    BeeBasis Basis,
    double Count,
    double LogSpread = 0,
    string? Measure = null,
    double? Grams = null,
    double? MilligramsPerBee = null)
{
    /// <summary>A counted jar.</summary>
    public static JarBees Counted(int bees) => new(BeeBasis.Counted, bees);

    /// <summary>A weighed jar: the whole number of bees that the weight makes.</summary>
    /// <param name="grams">Weight of the bees, above 0.</param>
    /// <param name="milligramsPerBee">Weight of one bee, above 0.</param>
    /// <param name="logSpread">Spread of the number.</param>
    public static JarBees Weighed(double grams, double milligramsPerBee, double logSpread) =>
        new(BeeBasis.Weighed, Math.Round(1000 * grams / milligramsPerBee), logSpread, Grams: Math.Round(grams, 3), MilligramsPerBee: milligramsPerBee);

    /// <summary>The number as the estimators take it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The fields break their ranges.</exception>
    [JsonIgnore]
    public BeeCount AsBeeCount => Basis == BeeBasis.Counted
        ? BeeCount.Counted((int)Math.Round(Count))
        : BeeCount.Uncertain(Basis, Count, LogSpread);
}
