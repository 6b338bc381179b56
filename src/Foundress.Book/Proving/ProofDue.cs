namespace Foundress.Book.Proving;

/// <summary>When the jars after a control are due.</summary>
/// <param name="From">First day: the end, or later where mites under cappings must come out first.</param>
/// <param name="To">Last day.</param>
/// <param name="State">How it stands.</param>
public sealed record ProofDue(DateOnly From, DateOnly To, ProofState State);
