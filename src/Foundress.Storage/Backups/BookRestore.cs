using Foundress.Storage.Sqlite;

namespace Foundress.Storage.Backups;

/// <summary>Puts a backup in the place of the book, so that a cut at any moment leaves either the old book or the new.</summary>
internal static class BookRestore
{
    public static RestoreResult Run(DataFolder folder, string backup, BookStoreOptions options)
    {
        folder.Create();
        using var alone = FolderLock.TryAlone(folder.OpenLock) ?? throw InUse(folder);
        var file = Path.GetFullPath(backup);
        var next = folder.Database + ".restoring";
        File.Delete(next);
        try
        {
            BackupFile.Take(folder, file, next);
            var wanted = SqliteRows.Digest(folder, file);
            SqliteCopy.Renew(folder, next);
            var (kept, damaged) = Keep(folder, new BackupFolder(folder, options.Time, target => SqliteCopy.Make(folder, folder.Database, target), companion: null));
            File.Move(next, folder.Database, overwrite: true);
            SqliteInspection.Of(folder, folder.Database, full: true);
            var now = SqliteRows.Digest(folder, folder.Database);
            return now.Count == wanted.Count && now.ToString() == wanted.ToString()
                ? new RestoreResult(now.Count, now.ToString(), kept, damaged)
                : throw new StorageException(
                    StorageFault.BadBackup, file,
                    $"After restoring, {folder.Database} holds {now.Count} entries with the fingerprint {now} where {file} holds {wanted.Count} with {wanted}. The book as it was is kept in {kept}.");
        }
        finally
        {
            File.Delete(next);
        }
    }

    private static (string? Kept, bool Damaged) Keep(DataFolder folder, BackupFolder backups)
    {
        if (new FileInfo(folder.Database) is not { Exists: true, Length: > 0 })
            return (null, false);
        try
        {
            var kept = SqliteInspection.Of(folder, folder.Database, full: true).Migrations.Count > 0
                ? backups.Make(BackupFolder.BeforeRestore).File
                : null;
            return SqliteCopy.TrySettle(folder) ? (kept, false) : throw InUse(folder);
        }
        catch (StorageException error) when (error.Fault is StorageFault.Damaged or StorageFault.NotABook)
        {
            return (backups.SetAside(), true);
        }
    }

    private static StorageException InUse(DataFolder folder) => new(
        StorageFault.InUse, folder.Database,
        $"The book in {folder.Path} is open in another program. Nothing was changed. Stop the server and every other program that uses this folder, then restore again.");
}
