using Foundress.Science.Estimation;

namespace Foundress.Knowledge;

/// <summary>What is known about weighing bees with a counted and weighed sub-sample.</summary>
/// <param name="SpreadOfBees">Relative spread of the weight of single bees of one jar, above 0 and at most 1.</param>
/// <param name="SpreadOfPlaces">Relative spread of the mean weight between scoops of one place and day, 0 to 1.</param>
/// <param name="ScaleResolution">Step of the scale in grams, 0 or more.</param>
/// <param name="SampleBees">How many bees a good sub-sample has.</param>
public sealed record WeighingFacts(Figure SpreadOfBees, Figure SpreadOfPlaces, Figure ScaleResolution, Figure SampleBees)
{
    /// <summary>The figures as the computation takes them: the error of a reading is that of rounding to the scale's step.</summary>
    public Weighing ToWeighing() => new(SpreadOfBees.Value, SpreadOfPlaces.Value, ScaleResolution.Value / Math.Sqrt(12d));
}
