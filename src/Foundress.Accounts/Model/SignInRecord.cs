namespace Foundress.Accounts.Model;

/// <summary>One try to sign in.</summary>
public sealed class SignInRecord
{
    /// <summary>Its number.</summary>
    public long Id { get; set; }

    /// <summary>When: milliseconds since 1970 UTC.</summary>
    public required long At { get; set; }

    /// <summary>Who; null when nobody is called that. What was typed is not kept: people type passwords into the wrong field.</summary>
    public Guid? PersonId { get; set; }

    /// <summary>How.</summary>
    public required SignInWay Way { get; set; }

    /// <summary>What came of it.</summary>
    public required SignInResult Result { get; set; }

    /// <summary>The network it came from, not the very address.</summary>
    public required string Network { get; set; }
}
