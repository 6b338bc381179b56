using Foundress.Storage.Backups;

namespace Foundress.Server.Endpoints;

/// <summary>A backup.</summary>
/// <param name="Name">Its file name in the folder of backups.</param>
/// <param name="Made">When it was made.</param>
/// <param name="Reason">Why, where it was not the daily one; otherwise empty.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Accounts">Whether the accounts lie beside it, in a file of the same name with <c>.accounts</c> behind it.</param>
public sealed record BackupLine(string Name, DateTimeOffset Made, string Reason, long Bytes, bool Accounts)
{
    internal static BackupLine Of(Backup backup) => new(Path.GetFileName(backup.File), backup.Made, backup.Reason, backup.Bytes, backup.Accounts is not null);
}
