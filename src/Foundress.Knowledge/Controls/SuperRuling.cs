namespace Foundress.Knowledge;

/// <summary>The rule on honey supers in one jurisdiction.</summary>
/// <param name="Jurisdiction">Whose rule.</param>
/// <param name="Rule">The rule. The label in the keeper's hand always comes before it.</param>
/// <param name="Text">The rule in words; null when there is nothing to add.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record SuperRuling(Jurisdiction Jurisdiction, SuperRule Rule, string? Text, Source Source);
