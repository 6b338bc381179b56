using Foundress.Storage.Model;
using Foundress.Storage.Transfer;
using Microsoft.Data.Sqlite;

namespace Foundress.Storage.Sqlite;

/// <summary>The rows of a book's file of any version, read without changing it.</summary>
internal static class SqliteRows
{
    // By name, so that a book of an older version can be read before it is brought up to date.
    private const string Sql = "SELECT operation, id, author, device, clock, kind, schema, payload FROM entries";

    /// <summary>The fingerprint of all of them.</summary>
    public static EntryDigest Digest(DataFolder folder, string file) => SqliteErrors.Guard(folder, () =>
    {
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Mode = SqliteOpenMode.ReadOnly, Pooling = false }.ToString());
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = Sql;
        using var rows = command.ExecuteReader();
        var digest = new EntryDigest();
        while (rows.Read())
        {
            digest.Add(new StoredEntry
            {
                Operation = rows.GetString(0),
                Id = rows.GetGuid(1),
                Author = rows.GetString(2),
                Device = rows.GetString(3),
                Clock = rows.GetString(4),
                Kind = rows.GetString(5),
                Schema = rows.GetInt32(6),
                Payload = rows.GetString(7),
                ReceivedAt = 0,
            });
        }

        return digest;
    });
}
