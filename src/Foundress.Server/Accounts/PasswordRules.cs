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
            return $"password: {password.Length} characters; at least {Least} are needed. Four words in a row are easy to keep in mind.";
        if (password.Length > Most)
            return $"password: {password.Length} characters; the most is {Most}.";
        if (password.Distinct().Count() < LeastDifferent)
            return "password: repeats the same few characters. Four words in a row are easy to keep in mind.";
        return PersonNames.Key(password) == PersonNames.Key(name) ? "password: is your name. Choose something others do not know." : null;
    }
}
