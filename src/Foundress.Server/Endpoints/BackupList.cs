namespace Foundress.Server.Endpoints;

/// <summary>The backups.</summary>
/// <param name="Folder">Where they lie.</param>
/// <param name="Backups">Newest first.</param>
public sealed record BackupList(string Folder, IReadOnlyList<BackupLine> Backups);
