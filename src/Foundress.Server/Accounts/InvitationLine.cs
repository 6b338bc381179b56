using Foundress.Accounts;

namespace Foundress.Server.Accounts;

/// <summary>An invitation that can still be used.</summary>
internal sealed record InvitationLine(Guid Id, Role Role, string ForName, DateTimeOffset Expires);
