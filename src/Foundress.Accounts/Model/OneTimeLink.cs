namespace Foundress.Accounts.Model;

/// <summary>A link that lets its bearer in once: an invitation, or a new password for somebody who is known.</summary>
public sealed class OneTimeLink
{
    /// <summary>Its id, which is no secret.</summary>
    public Guid Id { get; set; }

    /// <summary>The hash of its secret.</summary>
    public required string Hash { get; set; }

    /// <summary>The operation it invites to; null when it only sets a new password.</summary>
    public string? Operation { get; set; }

    /// <summary>The role it gives.</summary>
    public Role Role { get; set; }

    /// <summary>Whether it makes an administrator.</summary>
    public bool Administrator { get; set; }

    /// <summary>Who it is for, as the inviter calls them; empty when not said.</summary>
    public string ForName { get; set; } = "";

    /// <summary>Whose password it sets; null for an invitation.</summary>
    public Guid? PersonId { get; set; }

    /// <summary>Who made it; null for the console of the server.</summary>
    public Guid? MadeBy { get; set; }

    /// <summary>When it was made: milliseconds since 1970 UTC.</summary>
    public required long MadeAt { get; set; }

    /// <summary>Until when it can be used.</summary>
    public required long ExpiresAt { get; set; }

    /// <summary>When it was used.</summary>
    public long? UsedAt { get; set; }

    /// <summary>Who used it.</summary>
    public Guid? UsedBy { get; set; }

    /// <summary>When it was taken back.</summary>
    public long? WithdrawnAt { get; set; }
}
