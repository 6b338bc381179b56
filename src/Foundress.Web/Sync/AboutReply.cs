namespace Foundress.Web.Sync;

/// <summary>What the server says of itself.</summary>
/// <param name="Version">Its version.</param>
/// <param name="Incarnation">
/// Names this life of the server's book. It changes when a backup is restored: then positions begin anew, and what a device
/// holds is given again. Null when the server names none.
/// </param>
/// <param name="Demo">Whether it holds an invented book to look at.</param>
/// <param name="Accounts">Whether it has accounts.</param>
/// <param name="SignedInAs">Who it takes this device for; null when it does not know.</param>
public sealed record AboutReply(string Version, string? Incarnation, bool Demo, bool Accounts = false, string? SignedInAs = null);
