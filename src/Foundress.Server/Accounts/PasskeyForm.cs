namespace Foundress.Server.Accounts;

/// <summary>A new passkey, as the browser gives it.</summary>
internal sealed record PasskeyForm(string Credential, string? Label = null);
