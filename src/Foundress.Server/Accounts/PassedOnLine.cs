namespace Foundress.Server.Accounts;

/// <summary>An entry that somebody gave for another.</summary>
internal sealed record PassedOnLine(Guid Entry, Guid Person, string Device, DateTimeOffset At);
