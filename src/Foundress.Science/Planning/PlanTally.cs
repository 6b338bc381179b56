namespace Foundress.Science.Planning;

/// <summary>How many plans there were, and what became of them.</summary>
/// <param name="Conceivable">All sets of up to so many candidates on different days, whether they can follow each other or not; a double because there may be very many.</param>
/// <param name="Run">Plans worked out.</param>
/// <param name="TooLate">Plans dropped because the further control starts after the tolerance is already passed: nothing before a control's first day can change.</param>
/// <param name="Heavier">Plans dropped because one that keeps to the tolerance is no heavier in any respect.</param>
/// <param name="NotNeeded">Plans dropped because what they go on from keeps to the tolerance already.</param>
/// <param name="LeftAside">Plans a first reckoning held for worse than those worked out; the only ones that are dropped without proof.</param>
/// <param name="Conflicts">Plans dropped because a control cannot follow the others, by the model's reason.</param>
public sealed record PlanTally(double Conceivable, int Run, int TooLate, int Heavier, int NotNeeded, int LeftAside, IReadOnlyDictionary<int, int> Conflicts)
{
    /// <summary>Whether every plan was worked out or dropped for a reason that is sure.</summary>
    public bool Complete => LeftAside == 0;
}
