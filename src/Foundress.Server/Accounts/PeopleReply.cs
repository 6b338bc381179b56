namespace Foundress.Server.Accounts;

/// <summary>Everybody in an operation.</summary>
internal sealed record PeopleReply(IReadOnlyList<PersonLine> People, IReadOnlyList<InvitationLine> Invitations);
