namespace Foundress.Storage.Model;

/// <summary>What the database says of itself: a single row.</summary>
internal sealed class StoredBook
{
    public const int OnlyKey = 1;

    public int Key { get; set; } = OnlyKey;

    /// <summary>
    /// Made anew when the database is created and whenever a backup is restored. Cursors of readers hold only within one
    /// incarnation: after a restore the same sequence numbers are given again.
    /// </summary>
    public required Guid Incarnation { get; set; }
}
