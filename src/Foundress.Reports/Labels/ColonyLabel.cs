namespace Foundress.Reports.Labels;

/// <summary>What stands on a label.</summary>
/// <param name="Apiary">The apiary's name.</param>
/// <param name="Colony">The colony's name.</param>
/// <param name="Address">What the code opens.</param>
public sealed record ColonyLabel(string Apiary, string Colony, string Address);
