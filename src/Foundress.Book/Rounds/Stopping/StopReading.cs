using Foundress.Science.Sampling;

namespace Foundress.Book.Rounds;

/// <summary>Whether the jars taken in an apiary allow a round to stop there.</summary>
/// <param name="Decision">Go on, or stop and wait, or stop and act; the first decision reached stands.</param>
/// <param name="Jars">Jars that led to it.</param>
/// <param name="Mites">Mites in those jars.</param>
/// <param name="Sentence">What it means, in plain words.</param>
public sealed record StopReading(SequentialDecision Decision, int Jars, int Mites, string Sentence)
{
    /// <summary>Whether no further jar is needed here.</summary>
    public bool MayStop => Decision != SequentialDecision.GoOn;
}
