namespace Foundress.Server.Endpoints;

/// <summary>How an apiary stands.</summary>
/// <param name="Today">The day it was worked out for.</param>
/// <param name="Apiary">The apiary.</param>
/// <param name="Colonies">Its living colonies by name.</param>
/// <param name="Dues">What is due there.</param>
internal sealed record ApiaryAnswer(DateOnly Today, ApiaryLine Apiary, IReadOnlyList<ColonyLine> Colonies, IReadOnlyList<DueLine> Dues);
