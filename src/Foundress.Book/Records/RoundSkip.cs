using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>A colony of a round was not sampled; the next reserve stands in for it.</summary>
/// <param name="Round">The round.</param>
/// <param name="Colony">The colony that was passed over.</param>
/// <param name="Reason">Why, in the keeper's words. A skipped colony is not missing at random, so the result shows it.</param>
/// <param name="On">The day.</param>
public sealed record RoundSkip(RoundId Round, ColonyId Colony, string Reason, DateOnly On) : Record;
