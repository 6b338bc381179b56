using Foundress.Book.Judging;
using Foundress.Science.Sampling;

namespace Foundress.Book.Rounds;

/// <summary>What a number of jars in one apiary would buy.</summary>
/// <param name="Question">What is asked, with every figure it rests on.</param>
/// <param name="Spread">How unequal the colonies are taken to be.</param>
/// <param name="Lines">The lines the apiary is judged by.</param>
/// <param name="Rows">3, 5, 8, 12 and all colonies, and the number that is planned.</param>
/// <param name="Planned">The row of the number planned.</param>
/// <param name="Splits">The same number of jars spread over fewer colonies, several to each.</param>
/// <param name="ForPrecision">Fewest colonies whose mean is as precise as wanted; none when all of them do not reach it.</param>
/// <param name="ForDetection">Fewest colonies that hold one over the line with 95 chances in 100.</param>
/// <param name="Sentence">What the planned number buys, in plain words.</param>
/// <param name="Working">What it rests on.</param>
public sealed record RoundDesign(
    DesignQuestion Question,
    ColonySpread Spread,
    LinesInForce Lines,
    IReadOnlyList<DesignRow> Rows,
    DesignRow Planned,
    IReadOnlyList<JarSplit> Splits,
    SampleSize? ForPrecision,
    SampleSize? ForDetection,
    string Sentence,
    IReadOnlyList<WorkingStep> Working);
