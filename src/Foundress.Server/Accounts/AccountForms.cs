namespace Foundress.Server.Accounts;

/// <summary>The device somebody signs in on.</summary>
/// <param name="Name">Its name in the entries written on it.</param>
/// <param name="Label">What the person calls it.</param>
internal sealed record DeviceForm(string Name, string? Label = null);

/// <summary>Name and password.</summary>
internal sealed record SignInForm(string Name, string Password, DeviceForm? Device = null);

/// <summary>A passkey's answer to the challenge, as the browser gives it.</summary>
internal sealed record PasskeySignInForm(string Credential, DeviceForm? Device = null);

/// <summary>A one-time link's secret.</summary>
internal sealed record LinkForm(string Secret);

/// <summary>A one-time link used: by a newcomer with name and password, by somebody known with a new password, or by somebody signed in with neither.</summary>
internal sealed record JoinForm(string Secret, string? Name = null, string? Password = null, DeviceForm? Device = null);

/// <summary>Another password.</summary>
internal sealed record PasswordForm(string Present, string New);

/// <summary>A new passkey, as the browser gives it.</summary>
internal sealed record PasskeyForm(string Credential, string? Label = null);

/// <summary>An invitation to be made.</summary>
internal sealed record InvitationForm(Foundress.Accounts.Role Role, string? ForName = null, int? Days = null);

/// <summary>Another role for a member.</summary>
internal sealed record RoleForm(Foundress.Accounts.Role Role);
