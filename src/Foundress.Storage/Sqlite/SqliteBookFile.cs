using Foundress.Storage.Model;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Storage.Sqlite;

/// <summary>A SQLite file with a book in it that no other program knows of yet: one that is being written, or a copy.</summary>
internal sealed class SqliteBookFile : IDisposable
{
    private readonly SqliteBookContext _context;

    private SqliteBookFile(SqliteBookContext context) => _context = context;

    private SqliteConnection Connection => (SqliteConnection)_context.Database.GetDbConnection();

    /// <summary>Opens the file, making it where there is none, and brings its tables up to date.</summary>
    public static SqliteBookFile Open(string file)
    {
        var connection = new SqliteConnectionStringBuilder { DataSource = file, Mode = SqliteOpenMode.ReadWriteCreate, Pooling = false };
        var context = new SqliteBookContext(new DbContextOptionsBuilder<SqliteBookContext>().UseSqlite(connection.ToString()).Options);
        try
        {
            context.Database.OpenConnection();
            context.Database.Migrate();
            var book = new SqliteBookFile(context);
            // The file alone, without a log beside it. It is flushed when it is whole.
            book.Execute("PRAGMA journal_mode = DELETE; PRAGMA synchronous = OFF;");
            return book;
        }
        catch
        {
            context.Dispose();
            throw;
        }
    }

    /// <summary>Fills an empty book with rows, sequence numbers included, in one transaction.</summary>
    public void Fill(Guid incarnation, IEnumerable<StoredEntry> rows)
    {
        using var transaction = Connection.BeginTransaction();
        using var insert = Connection.CreateCommand();
        insert.Transaction = transaction;
        insert.CommandText =
            $"INSERT INTO entries (sequence, {string.Join(", ", EntryRows.Columns)}) VALUES (@sequence, {string.Join(", ", EntryRows.Columns.Select(column => "@" + column))})";
        foreach (var column in (string[])["sequence", .. EntryRows.Columns])
            insert.Parameters.Add(new SqliteParameter { ParameterName = "@" + column });
        foreach (var row in rows)
        {
            insert.Parameters[0].Value = row.Sequence;
            var values = EntryRows.Values(row);
            for (var n = 0; n < values.Length; n++)
                insert.Parameters[n + 1].Value = values[n];
            insert.ExecuteNonQuery();
        }

        using var book = Connection.CreateCommand();
        book.Transaction = transaction;
        book.CommandText = "INSERT INTO book (key, incarnation) VALUES (1, $incarnation)";
        book.Parameters.AddWithValue("$incarnation", incarnation);
        book.ExecuteNonQuery();
        transaction.Commit();
    }

    /// <summary>Every row, in the order of commit.</summary>
    public IEnumerable<StoredEntry> Rows() => _context.Entries.AsNoTracking().OrderBy(e => e.Sequence).AsEnumerable();

    public void Dispose() => _context.Dispose();

    private void Execute(string sql)
    {
        using var command = Connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
