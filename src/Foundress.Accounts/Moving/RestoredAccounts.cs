namespace Foundress.Accounts.Moving;

/// <summary>What a restore did with accounts.</summary>
/// <param name="People">How many people have one now.</param>
/// <param name="Kept">Where the accounts as they were before have been kept; null when there were none.</param>
public sealed record RestoredAccounts(int People, string? Kept);
