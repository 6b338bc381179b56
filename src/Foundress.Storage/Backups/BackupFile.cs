using Foundress.Storage.Sqlite;

namespace Foundress.Storage.Backups;

/// <summary>A backup that is to be restored. Everything about it is checked on a copy, before the book is touched.</summary>
internal static class BackupFile
{
    /// <summary>Copies a backup and checks the copy.</summary>
    /// <param name="folder">The data folder of the book that is to be restored.</param>
    /// <param name="file">The backup, by its full path.</param>
    /// <param name="next">The copy to make.</param>
    /// <returns>The number of entries in it.</returns>
    /// <exception cref="StorageException">The backup cannot be used.</exception>
    public static long Take(DataFolder folder, string file, string next)
    {
        if (!File.Exists(file))
            throw Bad(file, "there is no such file");
        if (file == folder.Database)
            throw Bad(file, "that is the book itself");
        try
        {
            SqliteInspection.Of(new DataFolder(Path.GetDirectoryName(file)!), file, full: true);
            SqliteCopy.Make(folder, file, next);
            var taken = SqliteInspection.Of(folder, next, full: true);
            if (taken.Migrations.Count == 0)
                throw Bad(file, "it holds no book");
            var known = SqliteDatabase.KnownMigrations(folder);
            return taken.Migrations.All(known.Contains)
                ? taken.Entries
                : throw Bad(file, "a newer version of Foundress made it; restore it with that version");
        }
        catch (StorageException error) when (error.Fault == StorageFault.Damaged)
        {
            throw Bad(file, "it is damaged", error);
        }
        catch (StorageException error) when (error.Fault == StorageFault.NotABook)
        {
            throw Bad(file, "it is not a book of Foundress", error);
        }
    }

    private static StorageException Bad(string file, string why, Exception? inner = null) => new(
        StorageFault.BadBackup, file,
        $"{file} cannot be restored: {why}. The book was left as it is. Choose another backup.", inner);
}
