using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>A round was ended in one apiary before every colony drawn had a jar.</summary>
/// <param name="Round">The round.</param>
/// <param name="Apiary">The apiary; the round goes on in the others.</param>
/// <param name="Reason">Why, in words: the rule's own when it allowed to stop, else the keeper's.</param>
/// <param name="On">The day.</param>
public sealed record RoundStop(RoundId Round, ApiaryId Apiary, string Reason, DateOnly On) : Record;
