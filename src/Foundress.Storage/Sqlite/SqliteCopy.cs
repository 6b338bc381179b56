using Microsoft.Data.Sqlite;

namespace Foundress.Storage.Sqlite;

/// <summary>Whole copies of a database that may be in use.</summary>
internal static class SqliteCopy
{
    /// <summary>Writes a checked copy, flushed to the disk. The target must not exist.</summary>
    /// <returns>The number of entries in the copy.</returns>
    /// <exception cref="StorageException">The copy could not be made; nothing is left of it.</exception>
    public static long Make(DataFolder folder, string source, string target)
    {
        try
        {
            SqliteErrors.Guard(folder, () =>
            {
                using var connection = new SqliteConnection(new SqliteConnectionStringBuilder
                {
                    DataSource = source,
                    Mode = SqliteOpenMode.ReadOnly,
                    Pooling = false,
                }.ToString());
                connection.Open();
                using var command = connection.CreateCommand();
                command.CommandText = "VACUUM INTO $target";
                command.Parameters.AddWithValue("$target", target);
                return command.ExecuteNonQuery();
            });
            Flush(target);
            return SqliteInspection.Of(folder, target, full: true).Entries;
        }
        catch
        {
            File.Delete(target);
            throw;
        }
    }

    /// <summary>Gives a copy that is about to become the book a new incarnation.</summary>
    public static void Renew(DataFolder folder, string file)
    {
        SqliteErrors.Guard(folder, () =>
        {
            using var connection = new SqliteConnection(new SqliteConnectionStringBuilder
            {
                DataSource = file,
                Mode = SqliteOpenMode.ReadWrite,
                Pooling = false,
            }.ToString());
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA journal_mode = DELETE; DELETE FROM book; INSERT INTO book (key, incarnation) VALUES (1, $incarnation);";
            command.Parameters.AddWithValue("$incarnation", Guid.NewGuid());
            return command.ExecuteNonQuery();
        });
        Flush(file);
    }

    /// <summary>Folds the write-ahead log into the file and makes sure that nobody else has it open.</summary>
    /// <returns>False when another program has it open.</returns>
    public static bool TrySettle(DataFolder folder) => SqliteErrors.Guard(folder, () =>
    {
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder
        {
            DataSource = folder.Database,
            Mode = SqliteOpenMode.ReadWrite,
            Pooling = false,
            DefaultTimeout = 1,
        }.ToString());
        connection.Open();
        using var command = connection.CreateCommand();
        // Leaving the write-ahead log needs the file to oneself.
        command.CommandText = "PRAGMA journal_mode = DELETE";
        try
        {
            return (string?)command.ExecuteScalar() == "delete";
        }
        catch (SqliteException error) when (error.SqliteErrorCode is 5 or 6)
        {
            return false;
        }
    });

    /// <summary>Returns when the file is on the disk.</summary>
    public static void Flush(string file)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
        stream.Flush(flushToDisk: true);
    }
}
