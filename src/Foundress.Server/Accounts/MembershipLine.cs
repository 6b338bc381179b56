using Foundress.Accounts;

namespace Foundress.Server.Accounts;

/// <summary>An operation somebody belongs to.</summary>
internal sealed record MembershipLine(string Operation, Role Role);
