namespace Foundress.Science.Planning;

/// <summary>How far a search is.</summary>
/// <param name="Done">Plans worked out.</param>
/// <param name="Of">Plans that will be, as far as is known now.</param>
/// <param name="Result">What was found; null until the last step.</param>
public readonly record struct PlanSearchStep(int Done, int Of, PlanSearchResult? Result);
