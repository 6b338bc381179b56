using Foundress.Science.Dynamics.Bees;

namespace Foundress.Knowledge;

/// <summary>What a keeper's frames, packages and splits are taken as where no number was counted.</summary>
/// <param name="BeesPerFrame">Bees on a frame covered on both sides.</param>
/// <param name="BeesLogSpread">Log spread of a colony's bees judged by frames.</param>
/// <param name="BroodCellsPerFrame">Cells with brood of every age on a frame with brood.</param>
/// <param name="BroodLogSpread">Log spread of a colony's brood judged by frames.</param>
/// <param name="PackageBees">Bees of a package.</param>
/// <param name="BeesPerKilogram">Bees in a kilogram, as bought.</param>
/// <param name="NucleusFramesOfBees">Frames of bees of a nucleus.</param>
/// <param name="NucleusFramesOfBrood">Frames of brood of a nucleus.</param>
/// <param name="SplitShareOfBees">Share of the bees that goes with a split.</param>
/// <param name="SplitShareOfBrood">Share of the brood that goes with a split.</param>
public sealed record FrameCounts(
    Figure BeesPerFrame,
    Figure BeesLogSpread,
    Figure BroodCellsPerFrame,
    Figure BroodLogSpread,
    Figure PackageBees,
    Figure BeesPerKilogram,
    Figure NucleusFramesOfBees,
    Figure NucleusFramesOfBrood,
    Figure SplitShareOfBees,
    Figure SplitShareOfBrood)
{
    private const double Most = 1e6;

    /// <summary>An inspection by frames as numbers of bees and cells, with how far they can be trusted.</summary>
    /// <param name="on">The day.</param>
    /// <param name="framesOfBees">Frames covered with bees on both sides; null when not looked at. What is below 0 counts as 0.</param>
    /// <param name="framesOfBrood">Frames with brood; null when not looked at.</param>
    public BeeSighting Sighting(DateOnly on, double? framesOfBees, double? framesOfBrood) =>
        new(on, Times(framesOfBees, BeesPerFrame), BeesLogSpread.Value, Times(framesOfBrood, BroodCellsPerFrame), BroodLogSpread.Value);

    /// <summary>Bees on so many frames.</summary>
    public double BeesOn(double frames) => Times(frames, BeesPerFrame)!.Value;

    /// <summary>Cells of brood on so many frames.</summary>
    public double BroodOn(double frames) => Times(frames, BroodCellsPerFrame)!.Value;

    // Entries of other devices are not checked again: what cannot be is brought to the nearest that can.
    private static double? Times(double? frames, Figure each) => frames is { } count ? double.IsNaN(count) ? 0 : Math.Clamp(count * each.Value, 0, Most) : null;
}
