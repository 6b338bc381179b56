using Microsoft.Data.Sqlite;

namespace Foundress.Storage.Sqlite;

/// <summary>What a database file turned out to be, looked at without changing it.</summary>
/// <param name="Entries">The number of entries.</param>
/// <param name="Migrations">The migrations it has been through, oldest first; none for a file that was only just made.</param>
internal sealed record SqliteInspection(long Entries, IReadOnlyList<string> Migrations)
{
    private const long ApplicationId = 0x466E6472;

    private static ReadOnlySpan<byte> Header => "SQLite format 3\0"u8;

    /// <summary>Looks a file over.</summary>
    /// <param name="folder">Where it lies, for messages.</param>
    /// <param name="file">The file.</param>
    /// <param name="full">Whether indexes are compared with their tables too, which takes longer.</param>
    /// <exception cref="StorageException">It is damaged, or no book.</exception>
    public static SqliteInspection Of(DataFolder folder, string file, bool full)
    {
        if (!HasHeader(folder, file))
            throw SqliteErrors.NotABook(folder, "it is not a database");
        return SqliteErrors.Guard(folder, () =>
        {
            using var connection = new SqliteConnection(new SqliteConnectionStringBuilder
            {
                DataSource = file,
                Mode = SqliteOpenMode.ReadOnly,
                Pooling = false,
                DefaultTimeout = 5,
            }.ToString());
            connection.Open();
            var verdict = (string)Scalar(connection, full ? "PRAGMA integrity_check(1)" : "PRAGMA quick_check(1)")!;
            if (verdict != "ok")
                throw SqliteErrors.Damaged(folder, verdict);
            if ((long)Scalar(connection, "PRAGMA application_id")! != ApplicationId)
            {
                // Cut off before its first table was made, it holds nothing and is as good as new.
                if ((long)Scalar(connection, "SELECT count(*) FROM sqlite_schema WHERE name NOT LIKE '\\_\\_EF%' ESCAPE '\\' AND tbl_name NOT LIKE '\\_\\_EF%' ESCAPE '\\'")! == 0)
                    return new SqliteInspection(0, []);
                throw SqliteErrors.NotABook(folder, "it is a database of another program");
            }

            var migrations = new List<string>();
            using (var command = connection.CreateCommand())
            {
                command.CommandText = "SELECT MigrationId FROM __EFMigrationsHistory ORDER BY MigrationId";
                using var reader = command.ExecuteReader();
                while (reader.Read())
                    migrations.Add(reader.GetString(0));
            }

            return new SqliteInspection((long)Scalar(connection, "SELECT count(*) FROM entries")!, migrations);
        });
    }

    private static object? Scalar(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }

    private static bool HasHeader(DataFolder folder, string file)
    {
        try
        {
            using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            Span<byte> start = stackalloc byte[Header.Length];
            return stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false) == start.Length && start.SequenceEqual(Header);
        }
        catch (Exception error) when (error is UnauthorizedAccessException or IOException)
        {
            throw new StorageException(
                StorageFault.ReadOnly, folder.Database,
                $"The file {file} cannot be read: {error.Message} Allow reading it, or name another file.", error);
        }
    }
}
