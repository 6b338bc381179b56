namespace Foundress.Server.Endpoints;

/// <summary>A colony by id and name.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
internal sealed record NamedColony(Guid Id, string Name);
