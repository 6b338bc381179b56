namespace Foundress.Knowledge;

/// <summary>Where a figure or statement comes from.</summary>
/// <param name="Text">The citation, or the plain admission that there is none. Never empty.</param>
/// <param name="Status">How well the origin is known.</param>
/// <param name="Doi">Digital object identifier without a resolver's address, for example <c>10.1051/apido/2009076</c>; null when there is none or it was not seen.</param>
public sealed record Source(string Text, SourceStatus Status, string? Doi = null);
