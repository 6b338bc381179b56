using Foundress.Accounts.Model;
using Foundress.Accounts.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Accounts;

/// <summary>The accounts of a data folder: a SQLite file beside the book, so that the book can be handed on without them.</summary>
public sealed class AccountsDatabase : IDisposable
{
    /// <summary>Name of the file.</summary>
    public const string FileName = "accounts.db";

    private static readonly TimeSpan SetupPatience = TimeSpan.FromMinutes(1);

    private readonly string _connection;
    private readonly DbContextOptions<SqliteAccountsContext> _options;

    private AccountsDatabase(string file, TimeProvider time)
    {
        (File, Time) = (file, time);
        _connection = new SqliteConnectionStringBuilder { DataSource = file, ForeignKeys = true, DefaultTimeout = 5 }.ToString();
        _options = new DbContextOptionsBuilder<SqliteAccountsContext>().UseSqlite(_connection).Options;
    }

    /// <summary>The file.</summary>
    public string File { get; }

    /// <summary>The clock.</summary>
    public TimeProvider Time { get; }

    /// <summary>Now, in milliseconds since 1970 UTC.</summary>
    public long Now => Time.GetUtcNow().ToUnixTimeMilliseconds();

    /// <summary>Whether a data folder has accounts.</summary>
    public static bool IsIn(string directory) => System.IO.File.Exists(Path.Combine(directory, FileName));

    /// <summary>Opens the accounts of a data folder, making the file if there is none.</summary>
    /// <param name="directory">The data folder.</param>
    /// <param name="time">The clock.</param>
    /// <param name="cancellation">Gives up waiting.</param>
    /// <exception cref="AccountsException">The file cannot be used; it has been left as it was.</exception>
    public static async Task<AccountsDatabase> OpenAsync(string directory, TimeProvider time, CancellationToken cancellation = default)
    {
        var file = Path.Combine(Path.GetFullPath(directory), FileName);
        var database = new AccountsDatabase(file, time);
        try
        {
            Directory.CreateDirectory(directory);
            await using var alone = await AloneAsync(file + ".setup.lock", cancellation);
            await database.PrepareAsync(cancellation);
            return database;
        }
        catch (Exception error) when (error is SqliteException or IOException or UnauthorizedAccessException)
        {
            database.Dispose();
            throw new AccountsException(
                AccountsFault.Store,
                $"The accounts in {file} cannot be read or written: {error.Message} The file was left as it is. Check that you may read and write it, or put a copy of it back.", error);
        }
        catch
        {
            database.Dispose();
            throw;
        }
    }

    /// <summary>A connection of one's own, to be disposed of.</summary>
    public AccountsContext Open() => new SqliteAccountsContext(_options);

    /// <summary>Closes the idle connections, so that the write-ahead log is folded into the file.</summary>
    public void Dispose()
    {
        using var connection = new SqliteConnection(_connection);
        SqliteConnection.ClearPool(connection);
    }

    private async Task PrepareAsync(CancellationToken cancellation)
    {
        MakeForOwnerOnly();
        await using var context = Open();
        var known = context.Database.GetMigrations().ToHashSet(StringComparer.Ordinal);
        var present = (await context.Database.GetAppliedMigrationsAsync(cancellation)).ToList();
        if (present.Find(migration => !known.Contains(migration)) is { } unknown)
        {
            throw new AccountsException(
                AccountsFault.Store, $"The accounts in {File} were written by a newer version of Foundress (it knows '{unknown}', this one does not). The file was left as it is. Start the newer version.");
        }

        await context.Database.ExecuteSqlRawAsync("PRAGMA journal_mode = WAL", cancellation);
        if (present.Count == known.Count)
            return;
        // Left behind by a program that was killed; whoever holds the set-up lock is alone.
        await context.Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS __EFMigrationsLock", cancellation);
        await context.Database.MigrateAsync(cancellation);
    }

    // Hashes of passwords and the keys of session cookies are nobody else's business on a computer with several users.
    private void MakeForOwnerOnly()
    {
        if (System.IO.File.Exists(File) || OperatingSystem.IsWindows())
            return;
        using var made = new FileStream(
            File, new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite });
    }

    private static async Task<FileStream> AloneAsync(string path, CancellationToken cancellation)
    {
        var pause = TimeSpan.FromMilliseconds(50);
        for (var waited = TimeSpan.Zero; ; waited += pause)
        {
            try
            {
                return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (waited < SetupPatience && System.IO.File.Exists(path))
            {
                await Task.Delay(pause, cancellation);
            }
        }
    }
}
