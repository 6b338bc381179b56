using System.Text;
using Microsoft.AspNetCore.Identity;

namespace Foundress.Accounts;

/// <summary>People's names, which they sign in with and which their records carry.</summary>
public sealed class PersonNames : ILookupNormalizer
{
    /// <summary>The most characters of a name.</summary>
    public const int GreatestLength = 80;

    /// <summary>A name as it is kept: without blanks around it, and with single ones inside.</summary>
    /// <exception cref="AccountsException">It is empty, too long, or holds characters that cannot be seen.</exception>
    public static string Read(string? text)
    {
        var name = Tidy(text ?? "");
        if (name.Length == 0)
            throw new AccountsException(AccountsFault.Value, AccountsTexts.NameNone);
        if (name.Length > GreatestLength)
            throw new AccountsException(AccountsFault.Value, AccountsTexts.FormatNameLong(name.Length, GreatestLength));
        return name.Any(letter => char.IsControl(letter) || char.GetUnicodeCategory(letter) is System.Globalization.UnicodeCategory.Format)
            ? throw new AccountsException(AccountsFault.Value, AccountsTexts.NameUnseen)
            : name;
    }

    /// <summary>What two names have in common when they are the same to a reader: forms, case and blanks do not count.</summary>
    public static string Key(string name)
    {
        try
        {
            return Tidy(name).ToUpperInvariant();
        }
        catch (ArgumentException)
        {
            // Half a surrogate pair has no other form: it is compared as it stands.
            return name;
        }
    }

    /// <inheritdoc/>
    public string? NormalizeName(string? name) => name is null ? null : Key(name);

    /// <inheritdoc/>
    public string? NormalizeEmail(string? email) => email is null ? null : Key(email);

    private static string Tidy(string text) =>
        string.Join(' ', text.Normalize(NormalizationForm.FormKC).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
