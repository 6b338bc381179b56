namespace Foundress.Science.Dynamics.Bees;

/// <summary>A deviation as seen on a day.</summary>
/// <param name="Day">The day, from 0.</param>
/// <param name="Deviation">Natural logarithm of seen over reckoned.</param>
/// <param name="Variance">Variance of the error in seeing it, above 0.</param>
public readonly record struct DeviationSeen(int Day, double Deviation, double Variance);
