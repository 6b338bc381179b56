using Foundress.Book.Journal;

namespace Foundress.Book.State;

/// <summary>The end of a colony.</summary>
/// <param name="On">The last day.</param>
/// <param name="Fate">What became of it.</param>
/// <param name="Cause">What the keeper wrote about it.</param>
/// <param name="Into">The colony that took its bees, when united.</param>
public sealed record ColonyEnd(DateOnly On, ColonyFate Fate, string? Cause = null, ColonyId? Into = null);
