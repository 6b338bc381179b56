namespace Foundress.Book.Registering;

/// <summary>That an entry of the register no longer holds: by whom, when and why.</summary>
/// <param name="By">Who struck it or wrote the record that took its place.</param>
/// <param name="At">When.</param>
/// <param name="Reason">Why.</param>
public sealed record RegisterStrike(string By, DateTimeOffset At, string Reason);
