namespace Foundress.Knowledge;

/// <summary>A measure of bees that is taken as a number of bees when nobody counts or weighs them.</summary>
/// <param name="Id">Kebab-case name.</param>
/// <param name="Name">Name shown to people.</param>
/// <param name="Volume">Its volume in millilitres.</param>
/// <param name="Bees">How many bees it is said to hold: the usual one first, then those that disagree.</param>
/// <param name="LogSpread">Standard deviation of the natural logarithm of the number of bees, for a jar that is not counted.</param>
/// <param name="Note">What to mind; null when there is nothing.</param>
public sealed record JarMeasure(string Id, string Name, Figure Volume, IReadOnlyList<Figure> Bees, Figure LogSpread, string? Note) : IHasId
{
    /// <summary>The number of bees assumed unless the keeper chooses or calibrates another.</summary>
    public Figure UsualBees => Bees[0];
}
