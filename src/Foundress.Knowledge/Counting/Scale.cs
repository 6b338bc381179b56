namespace Foundress.Knowledge;

/// <summary>
/// What a count means once it is divided by its base. Counts and lines on different scales are never compared or converted
/// silently: a wash and an ether roll of the same bees do not free the same share of mites.
/// </summary>
/// <param name="Id">Kebab-case name.</param>
/// <param name="Unit">Unit of every line on this scale, one of <see cref="Units.All"/>.</param>
/// <param name="Description">What is counted and how, in plain words.</param>
public sealed record Scale(string Id, string Unit, string Description) : IHasId;
