using System.Text.Json.Serialization;
using Foundress.Science;
using Foundress.Science.Estimation;

namespace Foundress.Book.Records;

/// <summary>How many bees were in a jar, as it was known when the jar was recorded.</summary>
/// <param name="Basis">Counted, weighed or assumed.</param>
/// <param name="Count">The number: exact and whole when counted, otherwise the most likely number. 1 to 20,000.</param>
/// <param name="LogSpread">Standard deviation of the natural logarithm of the number; 0 when counted, else up to 1.</param>
/// <param name="Measure">
/// Id of the measure the bees were taken with, from the knowledge files, or <see cref="OwnScoop"/>: what an assumed number stands
/// for; with a counted number it teaches what the measure holds.
/// </param>
/// <param name="Grams">Weight of the bees, when weighed.</param>
/// <param name="MilligramsPerBee">Weight of one bee the number was worked out with, when weighed.</param>
/// <param name="SampleBees">Bees that were both counted and weighed to learn what a bee weighs that day, when weighed so.</param>
/// <param name="SampleGrams">Their weight in grams.</param>
/// <param name="SampleApart">True when they were other bees of the place and day, not part of the jar.</param>
/// <param name="CountedJars">How many of the keeper's counted jars an assumed number was learnt from; none when it is the measure's.</param>
public sealed record JarBees(
    BeeBasis Basis,
    double Count,
    double LogSpread = 0,
    string? Measure = null,
    double? Grams = null,
    double? MilligramsPerBee = null,
    int? SampleBees = null,
    double? SampleGrams = null,
    bool? SampleApart = null,
    int? CountedJars = null)
{
    /// <summary>Stands for the keeper's own scoop where a measure is named.</summary>
    public const string OwnScoop = "own";

    private const int GramDigits = 3;

    /// <summary>A counted jar.</summary>
    /// <param name="bees">The number.</param>
    /// <param name="measure">Id of the measure they were taken with; null when none is known.</param>
    public static JarBees Counted(int bees, string? measure = null) => new(BeeBasis.Counted, bees, Measure: measure);

    /// <summary>A weighed jar: the whole number of bees that the weight makes.</summary>
    /// <param name="grams">Weight of the bees, above 0.</param>
    /// <param name="milligramsPerBee">Weight of one bee, above 0.</param>
    /// <param name="logSpread">Spread of the number.</param>
    public static JarBees Weighed(double grams, double milligramsPerBee, double logSpread) =>
        new(BeeBasis.Weighed, Math.Round(1000 * grams / milligramsPerBee), logSpread, Grams: Math.Round(grams, GramDigits), MilligramsPerBee: milligramsPerBee);

    /// <summary>A jar weighed with a counted and weighed sub-sample of its bees: the whole number of bees and its spread.</summary>
    /// <param name="grams">Weight of all bees of the jar, above 0.</param>
    /// <param name="sample">The counted and weighed bees.</param>
    /// <param name="weighing">What is known about weighing.</param>
    /// <exception cref="ArgumentOutOfRangeException">The weights do not go together: see <see cref="Weighing.Bees"/>.</exception>
    public static JarBees Weighed(double grams, WeighedSample sample, Weighing weighing)
    {
        var bees = weighing.Bees(grams, sample);
        return new(
            BeeBasis.Weighed, Math.Round(bees.Bees), Math.Round(bees.LogSpread, 4), Grams: Math.Round(grams, GramDigits),
            MilligramsPerBee: Math.Round(1000 * sample.GramsPerBee, 2), SampleBees: sample.Bees, SampleGrams: Math.Round(sample.Grams, GramDigits),
            SampleApart: sample.FromJar ? null : true);
    }

    /// <summary>The number as the estimators take it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The fields break their ranges.</exception>
    [JsonIgnore]
    public BeeCount AsBeeCount => Basis == BeeBasis.Counted
        ? BeeCount.Counted((int)Math.Round(Count))
        : BeeCount.Uncertain(Basis, Count, LogSpread);
}
