using Foundress.Accounts;

namespace Foundress.Server.Accounts;

/// <summary>What a one-time link does.</summary>
/// <param name="Kind"><c>invitation</c> or <c>password</c>.</param>
/// <param name="Operation">The operation it invites to.</param>
/// <param name="Role">The role it gives.</param>
/// <param name="Name">Who it is for.</param>
/// <param name="Expires">Until when it can be used.</param>
internal sealed record LinkReply(string Kind, string? Operation, Role? Role, string Name, DateTimeOffset Expires);
