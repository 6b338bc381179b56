namespace Foundress.Server.Endpoints;

/// <summary>What is due.</summary>
/// <param name="Today">The day it was worked out for.</param>
/// <param name="Total">How many things are due in all.</param>
/// <param name="Items">The first of them.</param>
internal sealed record DueAnswer(DateOnly Today, int Total, IReadOnlyList<DueLine> Items);
