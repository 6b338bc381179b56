namespace Foundress.Book.Planning;

/// <summary>How far a search for plans is.</summary>
/// <param name="Done">Parts done.</param>
/// <param name="Of">Parts in all, as far as is known now.</param>
/// <param name="Doing">What is being done, in words.</param>
/// <param name="Plans">What was found; null until the last step.</param>
public sealed record PlanStep(int Done, int Of, string Doing, ControlPlans? Plans = null);
