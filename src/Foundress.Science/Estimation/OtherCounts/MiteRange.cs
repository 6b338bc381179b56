namespace Foundress.Science.Estimation;

/// <summary>A range of numbers of mites in a whole colony.</summary>
/// <param name="Lowest">The fewest.</param>
/// <param name="Highest">The most.</param>
public readonly record struct MiteRange(double Lowest, double Highest);
