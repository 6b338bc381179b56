namespace Foundress.Accounts.Model;

/// <summary>What one person may do in one operation.</summary>
public sealed class Membership
{
    /// <summary>The person.</summary>
    public required Guid PersonId { get; set; }

    /// <summary>The operation.</summary>
    public required string Operation { get; set; }

    /// <summary>What they may do.</summary>
    public required Role Role { get; set; }

    /// <summary>Since when: milliseconds since 1970 UTC.</summary>
    public required long Since { get; set; }

    /// <summary>When it was ended; null while it lasts. The row stays: nobody else may write in the name of a former member.</summary>
    public long? EndedAt { get; set; }
}
