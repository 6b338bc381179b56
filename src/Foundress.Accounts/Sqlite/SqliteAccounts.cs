using System.Globalization;
using Foundress.Accounts.Model;
using Foundress.Storage;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Foundress.Accounts.Sqlite;

/// <summary>Accounts in a file of a data folder.</summary>
internal sealed class SqliteAccounts : IAccountsBackend
{
    private static readonly TimeSpan SetupPatience = TimeSpan.FromMinutes(1);

    private readonly string _connection;
    private readonly DbContextOptions<SqliteAccountsContext> _options;

    private readonly TimeProvider _time;

    public SqliteAccounts(string file, TimeProvider time)
    {
        (File, _time) = (file, time);
        _connection = new SqliteConnectionStringBuilder { DataSource = file, ForeignKeys = true, DefaultTimeout = 5 }.ToString();
        _options = new DbContextOptionsBuilder<SqliteAccountsContext>().UseSqlite(_connection).Options;
    }

    /// <summary>The file.</summary>
    public string File { get; }

    public string Place => File;

    public AccountsContext Open() => new SqliteAccountsContext(_options);

    public async Task PrepareAsync(CancellationToken cancellation)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(File)!);
            await AloneInSetupAsync(() => MakeReadyAsync(cancellation), cancellation);
        }
        catch (Exception error) when (error is SqliteException or IOException or UnauthorizedAccessException)
        {
            throw new AccountsException(
                AccountsFault.Store,
                AccountsTexts.FormatFileUnusable(File, error.Message), error);
        }
    }

    public async Task AloneInSetupAsync(Func<Task> work, CancellationToken cancellation)
    {
        await using var alone = await AloneAsync(File + ".setup.lock", cancellation);
        await work();
    }

    // Begun as immediate: no other program writes from here to the end.
    public Task<IDbContextTransaction> BeginAloneAsync(AccountsContext context, CancellationToken cancellation) =>
        context.Database.BeginTransactionAsync(System.Data.IsolationLevel.Serializable, cancellation);

    /// <summary>Closes the idle connections, so that the write-ahead log is folded into the file.</summary>
    public void Dispose()
    {
        using var connection = new SqliteConnection(_connection);
        SqliteConnection.ClearPool(connection);
    }

    private async Task MakeReadyAsync(CancellationToken cancellation)
    {
        SecretFile.Make(File);
        await using var context = Open();
        var known = context.Database.GetMigrations().ToHashSet(StringComparer.Ordinal);
        var present = (await context.Database.GetAppliedMigrationsAsync(cancellation)).ToList();
        if (present.Find(migration => !known.Contains(migration)) is { } unknown)
        {
            throw new AccountsException(
                AccountsFault.Store, AccountsTexts.FormatFileNewer(File, unknown));
        }

        await context.Database.ExecuteSqlRawAsync("PRAGMA journal_mode = WAL", cancellation);
        if (present.Count == known.Count)
            return;
        if (present.Count > 0)
            KeepBeforeUpdate();
        // Left behind by a program that was killed; whoever holds the set-up lock is alone.
        await context.Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS __EFMigrationsLock", cancellation);
        await context.Database.MigrateAsync(cancellation);
    }

    // So that the older program can be gone back to.
    private void KeepBeforeUpdate()
    {
        var backups = new DataFolder(Path.GetDirectoryName(File)!).Backups;
        Directory.CreateDirectory(backups);
        var kept = Path.Combine(backups, "accounts-" + _time.GetUtcNow().ToString("yyyyMMdd-HHmmss'Z'", CultureInfo.InvariantCulture) + "-before-update.db");
        if (!System.IO.File.Exists(kept))
            SqliteAccountsFile.Copy(File, kept);
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
