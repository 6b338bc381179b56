using Foundress.Storage.Model;
using Foundress.Storage.Sqlite;
using Foundress.Storage.Transfer;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace Foundress.Storage.Postgres;

/// <summary>
/// Backups of a PostgreSQL book as SQLite files, the same as the other kind: any of them can be restored into either. All
/// entries are read as of one moment, while the book stays in use.
/// </summary>
internal static class PostgresCopy
{
    // By name, so that a book of an older version can be copied before it is brought up to date.
    private const string Rows =
        "SELECT sequence, operation, id, author, device, clock, kind, schema, payload, received_at FROM entries ORDER BY sequence";

    /// <summary>Writes a checked copy, flushed to the disk. The target must not exist.</summary>
    /// <exception cref="StorageException">The copy could not be made; nothing is left of it.</exception>
    public static void Make(PostgresAddress address, string target)
    {
        try
        {
            var read = PostgresErrors.Guard(address, () => Write(address, target));
            var written = new EntryDigest();
            using (var file = SqliteBookFile.Open(target))
            {
                foreach (var row in file.Rows())
                    written.Add(row);
            }

            if (written.Count != read.Count || written.ToString() != read.ToString())
            {
                throw new StorageException(
                    StorageFault.BadBackup, target,
                    $"The backup {target} does not hold what was read from the PostgreSQL database {address}. It was thrown away; the book itself is unharmed. Check the disk and try again.");
            }

            SqliteCopy.Flush(target);
            SqliteInspection.Of(new DataFolder(Path.GetDirectoryName(Path.GetFullPath(target))!), target, full: true);
        }
        catch (SqliteException error)
        {
            Discard(target);
            throw new StorageException(
                error.SqliteErrorCode == 13 ? StorageFault.DiskFull : StorageFault.ReadOnly, target,
                $"The backup {target} cannot be written: {error.Message} The book itself is unharmed. Make room there, or choose another folder.", error);
        }
        catch
        {
            Discard(target);
            throw;
        }
    }

    private static EntryDigest Write(PostgresAddress address, string target)
    {
        using var connection = new NpgsqlConnection(address.Alone);
        connection.Open();
        using var transaction = connection.BeginTransaction(System.Data.IsolationLevel.RepeatableRead);
        Guid incarnation;
        using (var book = new NpgsqlCommand("SELECT incarnation FROM book WHERE key = 1", connection, transaction))
            incarnation = (Guid)(book.ExecuteScalar() ?? Guid.NewGuid());
        using var command = new NpgsqlCommand(Rows, connection, transaction) { CommandTimeout = 0 };
        using var rows = command.ExecuteReader();
        var digest = new EntryDigest();
        using var file = SqliteBookFile.Open(target);
        file.Fill(incarnation, Read(rows, digest));
        return digest;
    }

    private static IEnumerable<StoredEntry> Read(NpgsqlDataReader rows, EntryDigest digest)
    {
        while (rows.Read())
        {
            var row = new StoredEntry
            {
                Sequence = rows.GetInt64(0),
                Operation = PostgresText.Decode(rows.GetString(1)),
                Id = rows.GetGuid(2),
                Author = PostgresText.Decode(rows.GetString(3)),
                Device = PostgresText.Decode(rows.GetString(4)),
                Clock = PostgresText.Decode(rows.GetString(5)),
                Kind = PostgresText.Decode(rows.GetString(6)),
                Schema = rows.GetInt32(7),
                Payload = PostgresText.Decode(rows.GetString(8)),
                ReceivedAt = rows.GetInt64(9),
            };
            digest.Add(row);
            yield return row;
        }
    }

    private static void Discard(string target)
    {
        foreach (var part in (string[])["", "-journal", "-wal", "-shm"])
            File.Delete(target + part);
    }
}
