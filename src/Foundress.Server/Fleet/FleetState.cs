namespace Foundress.Server.Fleet;

/// <summary>How far a forecast is that is not ready yet.</summary>
/// <param name="State">waiting, or working.</param>
internal sealed record FleetState(string State);
