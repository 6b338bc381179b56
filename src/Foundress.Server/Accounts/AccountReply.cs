using Foundress.Accounts;

namespace Foundress.Server.Accounts;

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
