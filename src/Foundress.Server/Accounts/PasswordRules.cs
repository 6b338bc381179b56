using Foundress.Accounts;
using Foundress.Accounts.Model;
using Microsoft.AspNetCore.Identity;

namespace Foundress.Server.Accounts;

/// <summary>Passwords are judged by their length alone: rules of composition make people write them down and change one digit.</summary>
internal sealed class PasswordRules : IPasswordValidator<Person>
{
    public const int Least = 12;

    // The slow hash takes its time for every character.
    public const int Most = 200;

    private const int LeastDifferent = 4;

    public Task<IdentityResult> ValidateAsync(UserManager<Person> manager, Person user, string? password) =>
        Task.FromResult(Problem(user.UserName ?? "", password ?? "") is { } problem
            ? IdentityResult.Failed(new IdentityError { Code = nameof(PasswordRules), Description = problem })
            : IdentityResult.Success);

    private static string? Problem(string name, string password)
    {
        if (password.Length < Least)
            return AccountTexts.FormatPasswordShort(password.Length, Least);
        if (password.Length > Most)
            return AccountTexts.FormatPasswordLong(password.Length, Most);
        if (password.Distinct().Count() < LeastDifferent)
            return AccountTexts.PasswordRepeats;
        return PersonNames.Key(password) == PersonNames.Key(name) ? AccountTexts.PasswordIsName : null;
    }
}
