using Microsoft.AspNetCore.Identity;

namespace Foundress.Accounts.Model;

/// <summary>Somebody with an account. The user name is the name their records carry.</summary>
public sealed class Person : IdentityUser<Guid>
{
    /// <summary>Whether they look after the server itself: its backups, and the sign-ins of everybody. It opens no book to them.</summary>
    public bool IsAdministrator { get; set; }

    /// <summary>When the account was made: milliseconds since 1970 UTC.</summary>
    public long MadeAt { get; set; }
}
