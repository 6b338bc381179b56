namespace Foundress.Server.Accounts;

/// <summary>A new invitation. The link is told this once.</summary>
internal sealed record InvitationReply(Guid Id, string Link, DateTimeOffset Expires);
