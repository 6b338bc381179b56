namespace Foundress.Server.Accounts;

/// <summary>Name and password.</summary>
internal sealed record SignInForm(string Name, string Password, DeviceForm? Device = null);
