namespace Foundress.Book.Exchanging;

/// <summary>What the server says of itself.</summary>
/// <param name="Version">Its version.</param>
/// <param name="Incarnation">
/// Names this life of the server's book. It changes when a backup is restored: then positions begin anew, and what a device
/// holds is given again. Null when the server names none.
/// </param>
/// <param name="Demo">Whether it holds an invented book to look at.</param>
/// <param name="Now">The server's time; null when it names none.</param>
/// <param name="Accounts">Whether it has accounts.</param>
/// <param name="SignedInAs">Who it takes this device for; null when it does not know.</param>
/// <param name="Entries">How many entries each operation has that this device may read; null when it does not say.</param>
/// <param name="ReadsOnly">The operations in which this device's person may read and not record; null when it does not say.</param>
public sealed record AboutReply(
    string Version, string? Incarnation, bool Demo, DateTimeOffset? Now = null, bool Accounts = false, string? SignedInAs = null,
    IReadOnlyDictionary<string, long>? Entries = null, IReadOnlyCollection<string>? ReadsOnly = null);
