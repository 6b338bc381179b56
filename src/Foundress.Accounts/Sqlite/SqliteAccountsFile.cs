using Foundress.Storage.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Accounts.Sqlite;

/// <summary>Whole files of accounts: copies of one that may be in use, and ones that no other program knows of yet.</summary>
internal static class SqliteAccountsFile
{
    /// <summary>Writes a checked copy that only its owner can read, flushed to the disk. The target must not exist.</summary>
    /// <exception cref="SqliteException">It could not be made; nothing is left of it.</exception>
    public static void Copy(string source, string target)
    {
        try
        {
            SecretFile.Make(target);
            using (var connection = Open(source, SqliteOpenMode.ReadOnly))
            {
                using var command = connection.CreateCommand();
                command.CommandText = "VACUUM INTO $target";
                command.Parameters.AddWithValue("$target", target);
                command.ExecuteNonQuery();
            }

            SqliteCopy.Flush(target);
            Check(target);
        }
        catch
        {
            File.Delete(target);
            throw;
        }
    }

    /// <summary>Looks a file over, indexes included.</summary>
    /// <exception cref="SqliteException">It is damaged, or no database.</exception>
    public static void Check(string file)
    {
        using var connection = Open(file, SqliteOpenMode.ReadOnly);
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA integrity_check(1)";
        if (command.ExecuteScalar() as string is var verdict and not "ok")
            throw new SqliteException(AccountsTexts.FormatFileDamaged(verdict), 11);
    }

    /// <summary>Folds the write-ahead log into the file and makes sure that nobody else has it open.</summary>
    /// <returns>False when another program has it open.</returns>
    public static bool TrySettle(string file)
    {
        using var connection = Open(file, SqliteOpenMode.ReadWrite);
        using var command = connection.CreateCommand();
        // Leaving the write-ahead log needs the file to oneself.
        command.CommandText = "PRAGMA journal_mode = DELETE";
        try
        {
            return command.ExecuteScalar() as string == "delete";
        }
        catch (SqliteException error) when (error.SqliteErrorCode is 5 or 6)
        {
            return false;
        }
    }

    /// <summary>A context on a file that no other program knows of, without a log beside it.</summary>
    public static SqliteAccountsContext Context(string file) => new(new DbContextOptionsBuilder<SqliteAccountsContext>().UseSqlite(
        new SqliteConnectionStringBuilder { DataSource = file, ForeignKeys = true, Pooling = false }.ToString()).Options);

    private static SqliteConnection Open(string file, SqliteOpenMode mode)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Mode = mode, Pooling = false, DefaultTimeout = 5 }.ToString());
        try
        {
            connection.Open();
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }
}
