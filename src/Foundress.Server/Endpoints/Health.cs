namespace Foundress.Server.Endpoints;

/// <summary>How the server is.</summary>
/// <param name="Status"><c>live</c> or <c>ready</c>.</param>
public sealed record Health(string Status);
