using Foundress.Storage.Backups;
using Foundress.Storage.Model;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Storage.Sqlite;

/// <summary>The SQLite file of a data folder: made, brought up to date, and opened.</summary>
internal sealed class SqliteDatabase : IDisposable
{
    private readonly DataFolder _folder;
    private readonly DbContextOptions<SqliteBookContext> _options;
    private readonly string _connection;

    public SqliteDatabase(DataFolder folder, BookStoreOptions options)
    {
        _folder = folder;
        _connection = new SqliteConnectionStringBuilder
        {
            DataSource = folder.Database,
            Mode = SqliteOpenMode.ReadWriteCreate,
            DefaultTimeout = Math.Max(1, (int)options.Patience.TotalSeconds),
        }.ToString();
        _options = new DbContextOptionsBuilder<SqliteBookContext>()
            .UseSqlite(_connection)
            .AddInterceptors(new SqlitePragmas(options.Patience, options.GreatestPages))
            .Options;
    }

    public SqliteBookContext Open() => new(_options);

    /// <summary>Looks the file over and makes it ready for use. The caller holds the folder's set-up lock.</summary>
    /// <returns>The incarnation of the book.</returns>
    public async Task<Guid> PrepareAsync(BackupFolder backups, CancellationToken cancellation)
    {
        await using var context = Open();
        var known = context.Database.GetMigrations().ToHashSet(StringComparer.Ordinal);
        var present = new FileInfo(_folder.Database) is { Exists: true, Length: > 0 }
            ? SqliteInspection.Of(_folder, _folder.Database, full: false)
            : new SqliteInspection(0, []);
        if (present.Migrations.Count == 0 && backups.List().Count > 0)
            throw SqliteErrors.Missing(_folder);
        if (present.Migrations.FirstOrDefault(migration => !known.Contains(migration)) is { } unknown)
            throw SqliteErrors.Newer(_folder, unknown);
        return await SqliteErrors.GuardAsync(_folder, async () =>
        {
            await context.Database.OpenConnectionAsync(cancellation);
            // A file that cannot be written is opened for reading without a word. The keeper is told now, not at the first record.
            if (SQLitePCL.raw.sqlite3_db_readonly(((SqliteConnection)context.Database.GetDbConnection()).Handle, "main") == 1)
                throw SqliteErrors.CannotWrite(_folder);
            if (present.Migrations.Count < known.Count)
            {
                if (present.Entries > 0)
                    backups.Make(BackupFolder.BeforeUpdate);
                await ForgetCutOffMigrationAsync(context, cancellation);
                await context.Database.MigrateAsync(cancellation);
            }

            return await IncarnationAsync(context, cancellation);
        });
    }

    /// <summary>Closes the idle connections, so that the write-ahead log is folded into the file.</summary>
    public void Dispose()
    {
        using var connection = new SqliteConnection(_connection);
        SqliteConnection.ClearPool(connection);
    }

    // The migrator marks its work with a row and waits for ever for one that a killed program left behind. Whoever holds
    // the set-up lock is alone, so any such row is a leftover.
    private static async Task ForgetCutOffMigrationAsync(SqliteBookContext context, CancellationToken cancellation) =>
        await context.Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS __EFMigrationsLock", cancellation);

    private static async Task<Guid> IncarnationAsync(SqliteBookContext context, CancellationToken cancellation)
    {
        if (await context.Books.AsNoTracking().SingleOrDefaultAsync(cancellation) is { } held)
            return held.Incarnation;
        var made = new StoredBook { Incarnation = Guid.NewGuid() };
        context.Books.Add(made);
        await context.SaveChangesAsync(cancellation);
        return made.Incarnation;
    }
}
