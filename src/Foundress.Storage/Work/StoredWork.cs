namespace Foundress.Storage.Work;

/// <summary>One piece of work as a row.</summary>
internal sealed class StoredWork
{
    public long Number { get; set; }

    public required string Operation { get; set; }

    public required Guid Apiary { get; set; }

    public required string InputHash { get; set; }

    public required string ModelVersion { get; set; }

    public required string Input { get; set; }

    /// <summary>The name of a <see cref="WorkState"/> in small letters.</summary>
    public required string State { get; set; }

    public int Attempts { get; set; }

    /// <summary>The token of the latest lease; kept when the work is done, so that the same answer given twice is the same.</summary>
    public Guid? Lease { get; set; }

    /// <summary>By the clock of the database server, so that the clocks of the workers do not matter.</summary>
    public DateTimeOffset? LeasedUntil { get; set; }

    public string? Worker { get; set; }

    public string? Result { get; set; }

    public string? Trouble { get; set; }

    public DateTimeOffset? EndedAt { get; set; }
}
