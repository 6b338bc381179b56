namespace Foundress.Reports.Drawing;

/// <summary>One point of a curve that says how well each level fits the count.</summary>
/// <param name="Level">The level, in mites per 100 bees.</param>
/// <param name="Height">How well it fits, in any unit, not negative; only the ratios count.</param>
public readonly record struct DensityPoint(double Level, double Height);
