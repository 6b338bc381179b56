namespace Foundress.Server.Accounts;

/// <summary>A passkey.</summary>
internal sealed record PasskeyLine(string Id, string Label, DateTimeOffset Made);
