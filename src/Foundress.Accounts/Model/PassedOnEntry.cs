namespace Foundress.Accounts.Model;

/// <summary>An entry that somebody gave the server for another: who gave it, since its own author and device say nothing of that.</summary>
public sealed class PassedOnEntry
{
    /// <summary>The entry's operation.</summary>
    public required string Operation { get; set; }

    /// <summary>The entry.</summary>
    public required Guid EntryId { get; set; }

    /// <summary>Who gave it.</summary>
    public required Guid PersonId { get; set; }

    /// <summary>On which device, by its name in entries; empty when it was none that is enrolled.</summary>
    public required string Device { get; set; }

    /// <summary>When: milliseconds since 1970 UTC.</summary>
    public required long At { get; set; }
}
