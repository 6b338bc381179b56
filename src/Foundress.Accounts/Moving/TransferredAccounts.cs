namespace Foundress.Accounts.Moving;

/// <summary>What became of accounts that were to be taken along into a PostgreSQL database.</summary>
/// <param name="WereThere">Whether the database had accounts of people already, which were left as they are.</param>
/// <param name="Tables">What was copied and read back; nothing when there were accounts already.</param>
public sealed record TransferredAccounts(bool WereThere, IReadOnlyList<CopiedTable> Tables);
