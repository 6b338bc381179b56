using Foundress.Accounts;

namespace Foundress.Server.Accounts;

/// <summary>A member and their devices.</summary>
internal sealed record PersonLine(Guid Id, string Name, Role Role, DateTimeOffset Since, IReadOnlyList<DeviceLine> Devices);
