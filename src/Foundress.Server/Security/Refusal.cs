namespace Foundress.Server.Security;

/// <summary>Why somebody was not let through.</summary>
/// <param name="Status">The HTTP status.</param>
/// <param name="Detail">The message.</param>
internal sealed record Refusal(int Status, string Detail);
