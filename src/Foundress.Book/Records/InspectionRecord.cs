using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>What was seen on opening a colony. Everything but colony and day may be left out.</summary>
/// <param name="Colony">The colony.</param>
/// <param name="On">The day.</param>
/// <param name="FramesOfBees">Frames covered with bees on both sides; half frames allowed.</param>
/// <param name="FramesOfBrood">Frames with brood; half frames allowed.</param>
/// <param name="QueenSeen">Whether the queen was seen. Not seen does not mean not there.</param>
/// <param name="SupersOn">Whether honey supers are on: many controls are not allowed then.</param>
/// <param name="Note">Anything else.</param>
/// <param name="Clustered">Whether the bees sat in the winter cluster.</param>
public sealed record InspectionRecord(
    ColonyId Colony,
    DateOnly On,
    double? FramesOfBees = null,
    double? FramesOfBrood = null,
    bool? QueenSeen = null,
    bool? SupersOn = null,
    string? Note = null,
    bool? Clustered = null) : Record;
