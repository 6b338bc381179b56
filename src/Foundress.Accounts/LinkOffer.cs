namespace Foundress.Accounts;

/// <summary>What a new one-time link is to do.</summary>
/// <param name="Operation">The operation it invites to; null for a new password.</param>
/// <param name="Role">The role it gives.</param>
/// <param name="ForName">Who it is for, as the maker calls them; empty when not said.</param>
/// <param name="Lasts">How long it can be used.</param>
/// <param name="Administrator">Whether it makes an administrator of the server.</param>
/// <param name="Person">Whose password it sets; null for an invitation.</param>
public sealed record LinkOffer(string? Operation, Role Role, string ForName, TimeSpan Lasts, bool Administrator = false, Guid? Person = null)
{
    /// <summary>How long a link lasts when nothing else is said.</summary>
    public static readonly TimeSpan Usual = TimeSpan.FromDays(7);

    /// <summary>The longest a link may last.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromDays(31);
}
