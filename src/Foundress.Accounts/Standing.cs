namespace Foundress.Accounts;

/// <summary>Who somebody is and what they may do, as of now.</summary>
/// <param name="Person">Their id.</param>
/// <param name="Name">Their name.</param>
/// <param name="IsAdministrator">Whether they look after the server.</param>
/// <param name="Roles">Their role in each operation they belong to.</param>
public sealed record Standing(Guid Person, string Name, bool IsAdministrator, IReadOnlyDictionary<string, Role> Roles)
{
    /// <summary>Whether they have at least a role in an operation.</summary>
    public bool Has(string operation, Role least) => Roles.TryGetValue(operation, out var role) && role >= least;
}
