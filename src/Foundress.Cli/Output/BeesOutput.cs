using Foundress.Science;

namespace Foundress.Cli.Output;

/// <summary>The bees of a jar and how they are known.</summary>
internal sealed record BeesOutput(double Count, BeeBasis Basis, double LogSpread, string? Measure, double? Grams, int? SampleBees, double? SampleGrams);
