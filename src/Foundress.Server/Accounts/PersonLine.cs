using Foundress.Accounts;

namespace Foundress.Server.Accounts;

/// <summary>A member, their devices, and their calendar link if they have one.</summary>
internal sealed record PersonLine(Guid Id, string Name, Role Role, DateTimeOffset Since, IReadOnlyList<DeviceLine> Devices, CalendarLine? Calendar);
