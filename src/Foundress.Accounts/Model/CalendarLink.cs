namespace Foundress.Accounts.Model;

/// <summary>The secret address by which a calendar program, which cannot sign in, reads what is due for one person.</summary>
public sealed class CalendarLink
{
    /// <summary>Its id.</summary>
    public Guid Id { get; set; }

    /// <summary>Whose it is.</summary>
    public required Guid PersonId { get; set; }

    /// <summary>The hash of its secret.</summary>
    public required string Hash { get; set; }

    /// <summary>When it was made: milliseconds since 1970 UTC.</summary>
    public required long MadeAt { get; set; }

    /// <summary>When it was last read, to within an hour; null while it was not.</summary>
    public long? SeenAt { get; set; }

    /// <summary>When it was taken off; null while it can be read.</summary>
    public long? RevokedAt { get; set; }

    /// <summary>When it was last tried after that, to within an hour.</summary>
    public long? RefusedAt { get; set; }
}
