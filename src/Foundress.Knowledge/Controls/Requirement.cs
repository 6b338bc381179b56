namespace Foundress.Knowledge;

/// <summary>A state of the colony that a control needs, or only works best in.</summary>
/// <param name="Id">The need as written in the data, such as <c>broodless</c>; unique within its control.</param>
/// <param name="Need">The same, typed.</param>
/// <param name="IsStrict">True when the control is not workable without it; false when it works less well.</param>
/// <param name="Text">Why, in plain words.</param>
/// <param name="Source">Where that comes from.</param>
public sealed record Requirement(string Id, ControlNeed Need, bool IsStrict, string Text, Source Source) : IHasId;
