namespace Foundress.Accounts;

/// <summary>A member of an operation.</summary>
/// <param name="Person">Their id.</param>
/// <param name="Name">Their name.</param>
/// <param name="Role">What they may do.</param>
/// <param name="Since">Since when.</param>
public sealed record Member(Guid Person, string Name, Role Role, DateTimeOffset Since);
