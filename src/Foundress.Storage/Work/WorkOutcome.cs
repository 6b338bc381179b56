namespace Foundress.Storage.Work;

/// <summary>What became of a piece of work.</summary>
/// <param name="State">How far it has come.</param>
/// <param name="Result">The result of work that is done; otherwise null.</param>
/// <param name="Trouble">What the last attempt failed of; null when none did.</param>
/// <param name="Attempts">How often a worker had it.</param>
public sealed record WorkOutcome(WorkState State, string? Result, string? Trouble, int Attempts);
