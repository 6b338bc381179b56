using Foundress.Book.Changes;
using Foundress.Book.Judging;
using Foundress.Book.State;
using Foundress.Science;
using Foundress.Science.Estimation;

namespace Foundress.Book.Rounds;

/// <summary>What a round says of one apiary.</summary>
/// <param name="Apiary">The apiary.</param>
/// <param name="Colonies">Living colonies on the day of the round.</param>
/// <param name="Sampled">How many of them have a jar.</param>
/// <param name="Skipped">How many were passed over.</param>
/// <param name="Lines">The lines in force; null when there are none.</param>
/// <param name="Mean">The apiary's mean level; null with fewer than two sampled colonies.</param>
/// <param name="MeanInterval">Its interval.</param>
/// <param name="MeanOver">Chance that the mean is over the line.</param>
/// <param name="UnsampledOver">How many of the colonies without a jar are expected to be over the line.</param>
/// <param name="AnyUnsampledOver">Chance that at least one of them is.</param>
/// <param name="Ranked">The sampled colonies, highest first.</param>
/// <param name="Doubts">What may make single jars count too low, in words.</param>
/// <param name="Pooled">True when the other apiaries of the round were taken into account too.</param>
/// <param name="Change">How the mean moved since the visit before; null when there is none to compare with.</param>
/// <param name="Stop">Where the rule for stopping early stands; null for a round of fixed size.</param>
/// <param name="Sentence">What follows from it, in plain words.</param>
/// <param name="Working">How it was worked out.</param>
public sealed record ApiaryResult(
    Apiary Apiary,
    int Colonies,
    int Sampled,
    int Skipped,
    LinesInForce? Lines,
    MiteLevel? Mean,
    LevelInterval? MeanInterval,
    Chance? MeanOver,
    double? UnsampledOver,
    Chance? AnyUnsampledOver,
    IReadOnlyList<RankedColony> Ranked,
    IReadOnlyList<string> Doubts,
    bool Pooled,
    ChangeSince? Change,
    StopReading? Stop,
    string Sentence,
    IReadOnlyList<WorkingStep> Working);
