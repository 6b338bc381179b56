using Foundress.Accounts;

namespace Foundress.Server.Accounts;

/// <summary>An invitation to be made.</summary>
internal sealed record InvitationForm(Role Role, string? ForName = null, int? Days = null);
