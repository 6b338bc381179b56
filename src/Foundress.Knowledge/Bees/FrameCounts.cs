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
/// <param name="DroneCombShare">Share of the drone brood that one drone frame cut out holds.</param>
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
    Figure SplitShareOfBrood,
    Figure DroneCombShare);
