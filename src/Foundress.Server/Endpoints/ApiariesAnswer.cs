namespace Foundress.Server.Endpoints;

/// <summary>All apiaries, those that need their keeper first.</summary>
/// <param name="Today">The day it was worked out for.</param>
/// <param name="Apiaries">The apiaries.</param>
internal sealed record ApiariesAnswer(DateOnly Today, IReadOnlyList<ApiaryLine> Apiaries);
