namespace Foundress.Storage.Backups;

/// <summary>What a restore did.</summary>
/// <param name="Entries">Entries in the book now.</param>
/// <param name="Fingerprint">
/// Of the entries in the book now: the sum, modulo 2^256, of the SHA-256 of each, as a transfer tells it. It is that of the backup.
/// </param>
/// <param name="Kept">Where the book as it was before has been kept; null when there was none.</param>
/// <param name="WasDamaged">Whether the book as it was before was damaged, and so was moved aside as it stood.</param>
public sealed record RestoreResult(long Entries, string Fingerprint, string? Kept, bool WasDamaged);
