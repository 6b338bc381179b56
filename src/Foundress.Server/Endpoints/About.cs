namespace Foundress.Server.Endpoints;

/// <summary>What the server says of itself.</summary>
/// <param name="Version">The program's version.</param>
/// <param name="Incarnation">Changes when a backup is restored: then cursors begin at 0 again, and what a device holds is sent again.</param>
/// <param name="Operations">The operations in the book; where there are accounts, those that the one who asks belongs to.</param>
/// <param name="Demo">Whether the invented records are among them.</param>
/// <param name="Now">The server's time, by which a device sees whether its own clock is wrong.</param>
/// <param name="Accounts">Whether one must sign in to exchange.</param>
/// <param name="SignedInAs">Who asks; null when the server does not know.</param>
/// <param name="ReadsOnly">The operations in which the one who asks may read and not record; null when the server does not know them.</param>
public sealed record About(
    string Version, Guid Incarnation, IReadOnlyList<AboutOperation> Operations, bool Demo, DateTimeOffset Now, bool Accounts = false, string? SignedInAs = null, IReadOnlyList<string>? ReadsOnly = null);
