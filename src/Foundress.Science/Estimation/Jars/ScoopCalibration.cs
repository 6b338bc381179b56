namespace Foundress.Science.Estimation;

/// <summary>The calibration of one observer's scoop.</summary>
/// <param name="Observer">Who fills the jars.</param>
/// <param name="Scoop">The measure they are filled with.</param>
/// <param name="Calibration">What such a jar holds.</param>
public sealed record ScoopCalibration(string Observer, string Scoop, JarCalibration Calibration);
