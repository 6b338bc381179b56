namespace Foundress.Storage.Model;

/// <summary>One entry as a row. Only <see cref="Sequence"/> and <see cref="ReceivedAt"/> are the store's own; the rest is the entry's.</summary>
internal sealed class StoredEntry
{
    /// <summary>Order of commit in this database, from 1. Never given twice, so a reader's cursor misses nothing.</summary>
    public long Sequence { get; set; }

    public required string Operation { get; set; }

    public required Guid Id { get; set; }

    public required string Author { get; set; }

    public required string Device { get; set; }

    /// <summary>The hybrid clock in its text form, which sorts as the clock does.</summary>
    public required string Clock { get; set; }

    public required string Kind { get; set; }

    public required int Schema { get; set; }

    /// <summary>The payload character for character as it was received.</summary>
    public required string Payload { get; set; }

    /// <summary>When this database took the entry in: milliseconds since 1970 UTC.</summary>
    public required long ReceivedAt { get; set; }
}
