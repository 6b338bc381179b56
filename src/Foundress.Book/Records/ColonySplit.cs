using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>A new colony was made from part of another. The new one stands where its parent stood that day.</summary>
/// <param name="Parent">The colony that was divided; it lives on.</param>
/// <param name="Colony">The new colony.</param>
/// <param name="Name">The new colony's name.</param>
/// <param name="On">The day.</param>
/// <param name="FramesOfBees">Frames of bees that went with the new colony.</param>
/// <param name="FramesOfBrood">Frames of brood that went with it.</param>
public sealed record ColonySplit(
    ColonyId Parent,
    ColonyId Colony,
    string Name,
    DateOnly On,
    double? FramesOfBees = null,
    double? FramesOfBrood = null) : Record;
