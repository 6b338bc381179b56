namespace Foundress.Server.Accounts;

/// <summary>Another password.</summary>
internal sealed record PasswordForm(string Present, string New);
