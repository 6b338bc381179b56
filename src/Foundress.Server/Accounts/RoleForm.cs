using Foundress.Accounts;

namespace Foundress.Server.Accounts;

/// <summary>Another role for a member.</summary>
internal sealed record RoleForm(Role Role);
