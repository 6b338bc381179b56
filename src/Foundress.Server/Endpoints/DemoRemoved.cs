namespace Foundress.Server.Endpoints;

/// <summary>The invented records were removed.</summary>
/// <param name="Removed">How many entries there were.</param>
public sealed record DemoRemoved(int Removed);
