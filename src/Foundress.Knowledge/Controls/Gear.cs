namespace Foundress.Knowledge;

/// <summary>Something the keeper must have before a control can be done.</summary>
/// <param name="Id">Kebab-case name.</param>
/// <param name="Text">What it is, as in "a respirator with cartridges for acid gas".</param>
/// <param name="IsProtective">True when it guards the person, false when the work cannot be done without it.</param>
/// <param name="Source">Where the need comes from.</param>
public sealed record Gear(string Id, string Text, bool IsProtective, Source Source) : IHasId;
