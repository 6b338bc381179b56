namespace Foundress.Server.Accounts;

/// <summary>A one-time link used: by a newcomer with name and password, by somebody known with a new password, or by somebody signed in with neither.</summary>
internal sealed record JoinForm(string Secret, string? Name = null, string? Password = null, DeviceForm? Device = null);
