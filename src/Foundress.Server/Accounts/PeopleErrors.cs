using Microsoft.AspNetCore.Identity;

namespace Foundress.Server.Accounts;

/// <summary>What the framework can find wrong with a change to an account, in words for the person who asked for it.</summary>
internal sealed class PeopleErrors : IdentityErrorDescriber
{
    /// <inheritdoc/>
    public override IdentityError ConcurrencyFailure() => new() { Code = nameof(ConcurrencyFailure), Description = AccountTexts.ChangedMeanwhile };
}
