namespace Foundress.Accounts.Model;

/// <summary>A phone or laptop that exchanges entries without signing in each time.</summary>
public sealed class EnrolledDevice
{
    /// <summary>Its id in the list of devices.</summary>
    public Guid Id { get; set; }

    /// <summary>Whose it is.</summary>
    public required Guid PersonId { get; set; }

    /// <summary>The name it has in the entries written on it. It stays bound to this person for good.</summary>
    public required string Name { get; set; }

    /// <summary>What the person calls it.</summary>
    public required string Label { get; set; }

    /// <summary>The hash of its secret.</summary>
    public required string Hash { get; set; }

    /// <summary>When it was enrolled: milliseconds since 1970 UTC.</summary>
    public required long EnrolledAt { get; set; }

    /// <summary>When it was last let in, to within an hour.</summary>
    public required long SeenAt { get; set; }

    /// <summary>When it was taken off; null while it is let in.</summary>
    public long? RevokedAt { get; set; }

    /// <summary>When it last tried after that, to within an hour.</summary>
    public long? RefusedAt { get; set; }
}
