namespace Foundress.Server.Endpoints;

/// <summary>An operation in the book.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Entries">How many entries it has.</param>
public sealed record AboutOperation(string Id, long Entries);
