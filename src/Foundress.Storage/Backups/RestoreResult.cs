namespace Foundress.Storage.Backups;

/// <summary>What a restore did.</summary>
/// <param name="Entries">Entries in the book now.</param>
/// <param name="Kept">Where the book as it was before has been kept; null when there was none.</param>
/// <param name="WasDamaged">Whether the book as it was before was damaged, and so was moved aside as it stood.</param>
public sealed record RestoreResult(long Entries, string? Kept, bool WasDamaged);
