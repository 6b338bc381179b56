namespace Foundress.Server.Accounts;

/// <summary>An enrolled device.</summary>
internal sealed record DeviceLine(Guid Id, string Name, string Label, DateTimeOffset Enrolled, DateTimeOffset Seen, bool This);
