namespace Foundress.Knowledge;

/// <summary>What certified organic keeping says of a control.</summary>
/// <param name="Use">Allowed, not allowed, or a question for the certifier.</param>
/// <param name="Text">In words.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record OrganicRuling(OrganicUse Use, string Text, Source Source);
