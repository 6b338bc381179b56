namespace Foundress.Knowledge;

/// <summary>A figure that is told to people rather than computed with: "Shake at least", 1 min.</summary>
/// <param name="Id">Kebab-case name, unique within its list.</param>
/// <param name="Text">What the figure says, in plain words.</param>
/// <param name="Figure">The number, its unit and source.</param>
public sealed record Fact(string Id, string Text, Figure Figure) : IHasId;
