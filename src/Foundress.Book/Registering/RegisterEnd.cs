using Foundress.Book.Records;

namespace Foundress.Book.Registering;

/// <summary>What was written about the end of a use.</summary>
/// <param name="On">The day.</param>
/// <param name="Ending">How it ended.</param>
/// <param name="Colonies">Names of the colonies it ended in; empty for all.</param>
/// <param name="Reason">Why it did not run as planned.</param>
/// <param name="Note">Anything else.</param>
/// <param name="Struck">Why it no longer holds; null when it does.</param>
public sealed record RegisterEnd(DateOnly On, ControlEnding Ending, IReadOnlyList<string> Colonies, string? Reason, string? Note, RegisterStrike? Struck);
