using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>Says how a colony began: with how many bees, with or without brood. The later of two such entries holds.</summary>
/// <param name="Colony">The colony.</param>
/// <param name="On">The day it was hived or put up.</param>
/// <param name="As">What it began as.</param>
/// <param name="KilogramsOfBees">Weight of its bees, 0.1 to 10, when weighed.</param>
/// <param name="FramesOfBees">Frames covered with bees on both sides, when judged so.</param>
/// <param name="FramesOfBrood">Frames with brood that came with it.</param>
/// <param name="Note">Anything else.</param>
public sealed record ColonyBegan(
    ColonyId Colony,
    DateOnly On,
    ColonyBeginning As,
    double? KilogramsOfBees = null,
    double? FramesOfBees = null,
    double? FramesOfBrood = null,
    string? Note = null) : Record;
