using Foundress.Storage.Backups;
using Foundress.Storage.Model;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Storage.Sqlite;

/// <summary>The SQLite file of a data folder: made, brought up to date, and opened.</summary>
internal sealed class SqliteDatabase : IBookDatabase
{
    private readonly DataFolder _folder;
    private readonly FolderLock? _open;
    private readonly DbContextOptions<SqliteBookContext> _options;
    private readonly string _connection;

    private SqliteDatabase(DataFolder folder, BookStoreOptions options, FolderLock? open)
    {
        _folder = folder;
        _open = open;
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

    public Guid Incarnation { get; private set; }

    public int Writers => 1;

    /// <summary>The file of a folder, held open against a restore until this is disposed of.</summary>
    /// <exception cref="StorageException">A restore is at work, or other programs are and the book is wanted alone.</exception>
    public static SqliteDatabase Of(DataFolder folder, BookStoreOptions options)
    {
        var open = options.Alone ? FolderLock.TryAlone(folder.OpenLock) : FolderLock.TryShare(folder.OpenLock);
        return open is null
            ? throw new StorageException(
                StorageFault.InUse, folder.Path,
                options.Alone
                    ? $"The book in {folder.Path} is open in another program. Nothing was changed. Stop the server and every other program that uses this folder, then try again."
                    : $"A backup is being restored in {folder.Path}. Nothing was changed. Wait until it is done and try again.")
            : new SqliteDatabase(folder, options, open);
    }

    /// <summary>The migrations this version knows.</summary>
    public static IReadOnlySet<string> KnownMigrations(DataFolder folder)
    {
        using var database = new SqliteDatabase(folder, new BookStoreOptions(), null);
        using var context = database.Open();
        return context.Database.GetMigrations().ToHashSet(StringComparer.Ordinal);
    }

    public BookContext Open() => new SqliteBookContext(_options);

    public Task<T> GuardAsync<T>(Func<Task<T>> work) => SqliteErrors.GuardAsync(_folder, work);

    public async Task PrepareAsync(BackupFolder backups, CancellationToken cancellation)
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
        Incarnation = await SqliteErrors.GuardAsync(_folder, async () =>
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

    // While the file is open no other can take its place.
    public Task LookAsync(BookContext context, CancellationToken cancellation) => Task.CompletedTask;

    public Task ReadInOrderAsync(BookContext context, CancellationToken cancellation) => Task.CompletedTask;

    public Task<List<StoredEntry>> FindAsync(BookContext context, string operation, Guid[] ids, CancellationToken cancellation) =>
        context.Entries.AsNoTracking().Where(e => e.Operation == operation && ids.Contains(e.Id)).ToListAsync(cancellation);

    // SQLite transactions begin here as immediate: no other program can write between the look-up and the insert.
    public Task TakeTurnAsync(BookContext context, string operation, CancellationToken cancellation) => Task.CompletedTask;

    public async Task<IReadOnlyList<StoredEntry>> AddNewAsync(
        BookContext context, IReadOnlyCollection<StoredEntry> rows, CancellationToken cancellation)
    {
        await using var insert = new SqliteInsert(context);
        var held = new List<StoredEntry>();
        foreach (var row in rows)
        {
            if (!await insert.TryAddAsync(row, cancellation))
                held.Add(row);
        }

        return held;
    }

    public void Copy(string target) => SqliteCopy.Make(_folder, _folder.Database, target);

    public Task<long> CheckAsync(CancellationToken cancellation) =>
        Task.Run(() => SqliteInspection.Of(_folder, _folder.Database, full: true).Entries, cancellation);

    /// <summary>Closes the idle connections, so that the write-ahead log is folded into the file.</summary>
    public void Dispose()
    {
        using (var connection = new SqliteConnection(_connection))
            SqliteConnection.ClearPool(connection);
        _open?.Dispose();
    }

    // The migrator marks its work with a row and waits for ever for one that a killed program left behind. Whoever holds
    // the set-up lock is alone, so any such row is a leftover.
    private static async Task ForgetCutOffMigrationAsync(BookContext context, CancellationToken cancellation) =>
        await context.Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS __EFMigrationsLock", cancellation);

    private static async Task<Guid> IncarnationAsync(BookContext context, CancellationToken cancellation)
    {
        if (await context.Books.AsNoTracking().SingleOrDefaultAsync(cancellation) is { } held)
            return held.Incarnation;
        var made = new StoredBook { Incarnation = Guid.NewGuid() };
        context.Books.Add(made);
        await context.SaveChangesAsync(cancellation);
        return made.Incarnation;
    }
}
