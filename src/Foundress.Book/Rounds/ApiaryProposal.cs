using Foundress.Book.State;

namespace Foundress.Book.Rounds;

/// <summary>How many colonies of one apiary a round would sample.</summary>
/// <param name="Apiary">The apiary.</param>
/// <param name="Colonies">Its living colonies, by name.</param>
/// <param name="Take">How many to sample.</param>
public sealed record ApiaryProposal(Apiary Apiary, IReadOnlyList<Colony> Colonies, int Take);
