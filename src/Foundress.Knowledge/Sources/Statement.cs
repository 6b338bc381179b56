namespace Foundress.Knowledge;

/// <summary>A sentence without a number that is still somebody's claim, so it carries its source too.</summary>
/// <param name="Id">Kebab-case name, unique within its list.</param>
/// <param name="Text">The sentence.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record Statement(string Id, string Text, Source Source) : IHasId;
