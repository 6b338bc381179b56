using Foundress.Storage.Backups;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Storage.Sqlite;

/// <summary>SQLite's result codes (sqlite.org/rescode.html) as messages for the keeper.</summary>
internal static class SqliteErrors
{
    private const int Busy = 5;
    private const int Locked = 6;
    private const int ReadOnly = 8;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int CannotOpen = 14;
    private const int NotADatabase = 26;

    /// <summary>Runs work on the database, turning what SQLite says into what the keeper can use.</summary>
    public static T Guard<T>(DataFolder folder, Func<T> work)
    {
        try
        {
            return work();
        }
        catch (SqliteException error)
        {
            throw From(error, folder);
        }
    }

    /// <inheritdoc cref="Guard{T}(DataFolder, Func{T})"/>
    public static async Task<T> GuardAsync<T>(DataFolder folder, Func<Task<T>> work)
    {
        try
        {
            return await work();
        }
        catch (SqliteException error)
        {
            throw From(error, folder);
        }
        catch (DbUpdateException error) when (error.InnerException is SqliteException inner)
        {
            throw From(inner, folder);
        }
    }

    public static StorageException From(SqliteException error, DataFolder folder)
    {
        var file = folder.Database;
        return error.SqliteErrorCode switch
        {
            Busy or Locked => new StorageException(
                StorageFault.InUse, file,
                $"The database {file} is held by another program. Nothing was changed. Wait until it is done, or close it, and try again.", error),
            ReadOnly => CannotWrite(folder, error),
            CannotOpen => new StorageException(
                StorageFault.ReadOnly, file,
                $"The database {file} cannot be opened. Check that the folder is there and that you may read and write it.", error),
            Full => new StorageException(
                StorageFault.DiskFull, file,
                $"There is no room left on the disk for {file}. What was being added was not kept; everything acknowledged before is safe. Free some space and try again.", error),
            Corrupt => Damaged(folder, error.Message, error),
            NotADatabase => NotABook(folder, "it is not a database", error),
            _ => new StorageException(
                StorageFault.Disk, file,
                $"The disk refused to read or write {file}: {error.Message} What was being added was not kept; check the disk and try again.", error),
        };
    }

    public static StorageException CannotWrite(DataFolder folder, Exception? inner = null) => new(
        StorageFault.ReadOnly, folder.Database,
        $"The database {folder.Database} cannot be written: the file or its folder is read-only. Nothing was changed. Allow writing to both, or choose another folder with --data.",
        inner);

    public static StorageException Damaged(DataFolder folder, string detail, Exception? inner = null) => new(
        StorageFault.Damaged, folder.Database,
        $"The database {folder.Database} is damaged ({detail}). It was left as it is. {HowToRestore(folder)}", inner);

    public static StorageException NotABook(DataFolder folder, string why, Exception? inner = null) => new(
        StorageFault.NotABook, folder.Database,
        $"The file {folder.Database} is not a book of Foundress: {why}. It was left as it is. If it was put there by mistake, move it away or choose another folder with --data. {HowToRestore(folder)}",
        inner);

    public static StorageException Missing(DataFolder folder) => new(
        StorageFault.Missing, folder.Database,
        $"The database {folder.Database} is gone or empty, although there are backups of it. {HowToRestore(folder)} To begin a new book instead, choose another folder with --data, or move {folder.Backups} away.");

    public static StorageException Newer(DataFolder folder, string migration) => new(
        StorageFault.Newer, folder.Database,
        $"The database {folder.Database} was written by a newer version of Foundress (it knows '{migration}', this one does not). It was left as it is. Start the newer version, or restore a backup made before the update from {folder.Backups}.");

    private static string HowToRestore(DataFolder folder) => BackupFolder.ListOf(folder) is [var newest, ..]
        ? $"To go on from the newest backup, stop the server and run: foundress restore \"{newest.File}\" --data \"{folder.Path}\" (the present file is kept beside it)."
        : $"There is no backup in {folder.Backups}.";
}
