namespace Foundress.Knowledge;

/// <summary>What one adult bee weighs in some condition.</summary>
/// <param name="Id">Kebab-case name.</param>
/// <param name="Name">Which bees, shown to people.</param>
/// <param name="Weight">Milligrams for each bee.</param>
public sealed record BeeWeight(string Id, string Name, Figure Weight) : IHasId;
