using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>A jar of bees was sampled and its mites counted.</summary>
/// <param name="On">The day the bees were taken.</param>
/// <param name="Method">Id of the counting method, from the knowledge files.</param>
/// <param name="Passes">Mites counted in each pass over the same bees, first to last: 1 to 10 counts.</param>
/// <param name="Bees">How many bees were in the jar and how that is known.</param>
/// <param name="Colony">The colony; none for a jar that was tried without a book.</param>
/// <param name="Round">The round the jar belongs to, if any.</param>
/// <param name="Conditions">What may have made the count too low.</param>
/// <param name="Note">Anything else.</param>
public sealed record JarRecord(
    DateOnly On,
    string Method,
    IReadOnlyList<int> Passes,
    JarBees Bees,
    ColonyId? Colony = null,
    RoundId? Round = null,
    JarConditions? Conditions = null,
    string? Note = null) : Record
{
    /// <summary>Mites counted in all passes together.</summary>
    public int Mites => Passes.Sum();
}
