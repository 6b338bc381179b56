namespace Foundress.Accounts;

/// <summary>What somebody may do in one operation's book. Each holds what the ones before it hold.</summary>
public enum Role
{
    /// <summary>Reads everything, writes nothing: an inspector, a trainer.</summary>
    Reader,

    /// <summary>Reads, and records in their own name.</summary>
    Helper,

    /// <summary>Also invites and removes people, and passes on records of others.</summary>
    Keeper,
}
