using Foundress.Science.Estimation;

namespace Foundress.Book.Calibrating;

/// <summary>What one person's counted jars of one measure teach.</summary>
/// <param name="Observer">Who filled and counted them: the author of their entries.</param>
/// <param name="Measure">Id of the measure, or <see cref="Records.JarBees.OwnScoop"/>.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Counted">Bees of each counted jar, by day.</param>
/// <param name="Calibration">What such a jar holds.</param>
/// <param name="Use">Whether uncounted jars of this person and measure are taken as these counted ones teach.</param>
public sealed record TaughtScoop(
    string Observer, string Measure, string Name, IReadOnlyList<int> Counted, JarCalibration Calibration, CalibrationUse Use);
