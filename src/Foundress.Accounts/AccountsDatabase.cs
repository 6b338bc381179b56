using Foundress.Accounts.Model;
using Foundress.Accounts.Postgres;
using Foundress.Accounts.Sqlite;
using Foundress.Storage;
using Microsoft.EntityFrameworkCore.Storage;

namespace Foundress.Accounts;

/// <summary>
/// The accounts of a book, apart from it so that the book can be handed on without them: a SQLite file of the data folder, or,
/// where the book lies in PostgreSQL, a schema of the same database, which all servers on it share.
/// </summary>
public sealed class AccountsDatabase : IDisposable
{
    /// <summary>Name of the file.</summary>
    public const string FileName = "accounts.db";

    private readonly IAccountsBackend _backend;

    private AccountsDatabase(IAccountsBackend backend, TimeProvider time) => (_backend, Time) = (backend, time);

    /// <summary>The file; null where they lie in PostgreSQL.</summary>
    public string? File => (_backend as SqliteAccounts)?.File;

    /// <summary>Where they lie, in words that may be shown.</summary>
    public string Place => _backend.Place;

    /// <summary>The clock.</summary>
    public TimeProvider Time { get; }

    /// <summary>Now, in milliseconds since 1970 UTC.</summary>
    public long Now => Time.GetUtcNow().ToUnixTimeMilliseconds();

    /// <summary>Whether a data folder has a file of accounts.</summary>
    public static bool IsIn(string directory) => System.IO.File.Exists(Path.Combine(directory, FileName));

    /// <summary>Whether a book has accounts.</summary>
    /// <param name="directory">The data folder.</param>
    /// <param name="database">The PostgreSQL database that holds the book; none for the file of the data folder.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="StorageException">The database cannot be reached or entered.</exception>
    public static async Task<bool> ExistAsync(string directory, PostgresAddress? database, CancellationToken cancellation = default) =>
        // A file beside a database counts: otherwise a book moved over without its accounts would be open to everybody.
        IsIn(directory) || (database is not null && await PostgresAccounts.AreInAsync(database, cancellation));

    /// <summary>Opens the accounts of a book, making them if there are none.</summary>
    /// <param name="directory">The data folder.</param>
    /// <param name="time">The clock.</param>
    /// <param name="database">The PostgreSQL database that holds the book; none for the file of the data folder.</param>
    /// <param name="cancellation">Gives up waiting.</param>
    /// <exception cref="AccountsException">The accounts cannot be used; they have been left as they were.</exception>
    /// <exception cref="StorageException">The PostgreSQL database cannot be used.</exception>
    public static async Task<AccountsDatabase> OpenAsync(
        string directory, TimeProvider time, PostgresAddress? database = null, CancellationToken cancellation = default)
    {
        if (database is not null && IsIn(directory) && !await PostgresAccounts.AreInAsync(database, cancellation))
        {
            throw new AccountsException(
                AccountsFault.Store,
                AccountsTexts.FormatInFileNotInDatabase(FileOf(directory), database, directory));
        }

        return await OpenAsync(database is null ? new SqliteAccounts(FileOf(directory), time) : new PostgresAccounts(database), time, cancellation);
    }

    /// <summary>Opens accounts wherever they lie.</summary>
    internal static async Task<AccountsDatabase> OpenAsync(IAccountsBackend backend, TimeProvider time, CancellationToken cancellation)
    {
        var accounts = new AccountsDatabase(backend, time);
        try
        {
            await backend.PrepareAsync(cancellation);
            return accounts;
        }
        catch
        {
            accounts.Dispose();
            throw;
        }
    }

    /// <summary>The file of accounts of a data folder.</summary>
    internal static string FileOf(string directory) => Path.Combine(Path.GetFullPath(directory), FileName);

    /// <summary>A connection of one's own, to be disposed of.</summary>
    public AccountsContext Open() => _backend.Open();

    /// <summary>
    /// Begins a transaction beside which no other of its kind runs, in this program or another: what it has looked at is still
    /// so when it ends.
    /// </summary>
    public Task<IDbContextTransaction> BeginAloneAsync(AccountsContext context, CancellationToken cancellation = default) =>
        _backend.BeginAloneAsync(context, cancellation);

    /// <summary>Runs work that makes a server ready while no other server does, so that what one makes the next finds.</summary>
    public Task AloneInSetupAsync(Func<Task> work, CancellationToken cancellation = default) => _backend.AloneInSetupAsync(work, cancellation);

    /// <inheritdoc/>
    public void Dispose() => _backend.Dispose();
}
