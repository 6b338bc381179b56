using Foundress.Accounts;

namespace Foundress.Server.Accounts;

/// <summary>An operation somebody belongs to.</summary>
internal sealed record MembershipLine(string Operation, Role Role);

/// <summary>Who asks, and what they may do.</summary>
/// <param name="Id">Their id.</param>
/// <param name="Name">Their name.</param>
/// <param name="Administrator">Whether they look after the server.</param>
/// <param name="SignedIn">Whether they signed in, rather than only being known by their device.</param>
/// <param name="Device">Name of their enrolled device in entries; null when they ask from none.</param>
/// <param name="Operations">The operations they belong to.</param>
internal sealed record AccountReply(Guid Id, string Name, bool Administrator, bool SignedIn, string? Device, IReadOnlyList<MembershipLine> Operations)
{
    public static AccountReply Of(Caller caller) => Of(caller.Standing, caller.HasSignedIn, caller.Device);

    public static AccountReply Of(Standing standing, bool signedIn, string? device) => new(
        standing.Person, standing.Name, standing.IsAdministrator, signedIn, device,
        [.. standing.Roles.OrderBy(role => role.Key, StringComparer.Ordinal).Select(role => new MembershipLine(role.Key, role.Value))]);
}

/// <summary>What a one-time link does.</summary>
/// <param name="Kind"><c>invitation</c> or <c>password</c>.</param>
/// <param name="Operation">The operation it invites to.</param>
/// <param name="Role">The role it gives.</param>
/// <param name="Name">Who it is for.</param>
/// <param name="Expires">Until when it can be used.</param>
internal sealed record LinkReply(string Kind, string? Operation, Role? Role, string Name, DateTimeOffset Expires);

/// <summary>An enrolled device.</summary>
internal sealed record DeviceLine(Guid Id, string Name, string Label, DateTimeOffset Enrolled, DateTimeOffset Seen, bool This);

/// <summary>A passkey.</summary>
internal sealed record PasskeyLine(string Id, string Label, DateTimeOffset Made);

/// <summary>A member and their devices.</summary>
internal sealed record PersonLine(Guid Id, string Name, Role Role, DateTimeOffset Since, IReadOnlyList<DeviceLine> Devices);

/// <summary>An invitation that can still be used.</summary>
internal sealed record InvitationLine(Guid Id, Role Role, string ForName, DateTimeOffset Expires);

/// <summary>Everybody in an operation.</summary>
internal sealed record PeopleReply(IReadOnlyList<PersonLine> People, IReadOnlyList<InvitationLine> Invitations);

/// <summary>A new invitation. The link is told this once.</summary>
internal sealed record InvitationReply(Guid Id, string Link, DateTimeOffset Expires);

/// <summary>An entry that somebody gave for another.</summary>
internal sealed record PassedOnLine(Guid Entry, Guid Person, string Device, DateTimeOffset At);
