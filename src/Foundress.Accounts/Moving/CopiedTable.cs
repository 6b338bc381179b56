namespace Foundress.Accounts.Moving;

/// <summary>What became of one table of accounts that was copied.</summary>
/// <param name="Table">What it holds, in words.</param>
/// <param name="Rows">How many rows were copied.</param>
/// <param name="RowsThere">How many of the same kind were read back from the copy.</param>
/// <param name="IsSame">Whether each of them came back as it was.</param>
public sealed record CopiedTable(string Table, long Rows, long RowsThere, bool IsSame);
