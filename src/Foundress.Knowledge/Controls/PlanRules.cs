namespace Foundress.Knowledge;

/// <summary>How plans of controls are searched.</summary>
/// <param name="Tolerance">The chance of standing over the line that is borne where the keeper set none, between 0 and 1.</param>
/// <param name="Settle">Days after the first possible start from which chances count, where the tolerance is passed before any control could have worked.</param>
/// <param name="SealedCells">Fewer sealed worker cells than this count as no sealed brood when brood is foretold.</param>
public sealed record PlanRules(Figure Tolerance, Figure Settle, Figure SealedCells);
