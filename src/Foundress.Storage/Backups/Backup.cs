namespace Foundress.Storage.Backups;

/// <summary>A backup file.</summary>
/// <param name="File">Its full path.</param>
/// <param name="Made">When it was made.</param>
/// <param name="Reason">Why, where it was not the daily one: <c>before-update</c>, <c>before-restore</c>; otherwise empty.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Accounts">The accounts as they were, in a file beside it; null when there were none.</param>
public sealed record Backup(string File, DateTimeOffset Made, string Reason, long Bytes, string? Accounts);
