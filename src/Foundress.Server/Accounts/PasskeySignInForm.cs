namespace Foundress.Server.Accounts;

/// <summary>A passkey's answer to the challenge, as the browser gives it.</summary>
internal sealed record PasskeySignInForm(string Credential, DeviceForm? Device = null);
