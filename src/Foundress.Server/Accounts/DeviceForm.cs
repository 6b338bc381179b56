namespace Foundress.Server.Accounts;

/// <summary>The device somebody signs in on.</summary>
/// <param name="Name">Its name in the entries written on it.</param>
/// <param name="Label">What the person calls it.</param>
internal sealed record DeviceForm(string Name, string? Label = null);
