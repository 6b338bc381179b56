namespace Foundress.Server.Endpoints;

/// <summary>A living colony of an apiary.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Jar">Its last jar within a year; none when there is none.</param>
internal sealed record ColonyLine(Guid Id, string Name, LastJar? Jar);
