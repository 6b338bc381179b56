namespace Foundress.Web.Sync;

/// <summary>What the server says of itself.</summary>
/// <param name="Version">Its version.</param>
/// <param name="Demo">Whether it holds an invented book to look at.</param>
public sealed record AboutReply(string Version, bool Demo);
