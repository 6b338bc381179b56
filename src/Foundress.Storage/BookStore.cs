using System.Runtime.CompilerServices;
using Foundress.Book;
using Foundress.Book.Journal;
using Foundress.Storage.Backups;
using Foundress.Storage.Model;
using Foundress.Storage.Postgres;
using Foundress.Storage.Sqlite;
using Foundress.Storage.Work;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Storage;

/// <summary>
/// The journal on disk: every operation's entries in one database, which is the SQLite file of a data folder or, when
/// <see cref="BookStoreOptions.Database"/> names one, a PostgreSQL database.
/// </summary>
/// <remarks>
/// Safe for concurrent use, also by several programs: with SQLite on one computer, with PostgreSQL on many. The folder must
/// not lie on a network share. Entries are only ever added; the sole exception is <see cref="RemoveDemoAsync"/>.
/// </remarks>
public sealed partial class BookStore : IDisposable
{
    /// <summary>The most entries one page gives.</summary>
    public const int GreatestPage = 2_000;

    // Few enough places for one statement.
    private const int AtOnce = 1_000;

    /// <summary>A page ends with the entry that passes so many characters of payload: long payloads must not fill the memory of a phone.</summary>
    public const int GreatestPageCharacters = 4_000_000;

    private static readonly TimeSpan SetupPatience = TimeSpan.FromMinutes(1);

    private readonly BookStoreOptions _options;
    private readonly IBookDatabase _database;
    private readonly BackupFolder _backups;
    private readonly WriterGates _writers;

    private BookStore(DataFolder folder, BookStoreOptions options, IBookDatabase database)
    {
        Folder = folder;
        _options = options;
        _database = database;
        _writers = new WriterGates(database.Writers);
        _backups = new BackupFolder(folder, options.Time, database.Copy, options.Companion);
    }

    /// <summary>Where the book lies, or its backups when the book lies in PostgreSQL.</summary>
    public DataFolder Folder { get; }

    /// <summary>Where the book lies, in words that may be shown: the folder, or the PostgreSQL database.</summary>
    public string Place => _options.Database is { } address ? $"PostgreSQL {address}" : Folder.Path;

    /// <summary>
    /// Made anew whenever the book has been set back to an earlier state; cursors of <see cref="ReadAsync"/> hold within one
    /// incarnation. Up to date after every reading.
    /// </summary>
    public Guid Incarnation => _database.Incarnation;

    /// <summary>Work that servers on one PostgreSQL database share out among themselves; none where the book lies in a file.</summary>
    public WorkQueue? Work => (_database as PostgresDatabase)?.Work;

    /// <summary>
    /// Opens the book in a folder, making it if there is none: checks the file, makes a backup when one is due, and brings
    /// an older database up to date (with a backup before).
    /// </summary>
    /// <param name="directory">The data folder.</param>
    /// <param name="options">How the store behaves.</param>
    /// <param name="cancellation">Gives up waiting.</param>
    /// <exception cref="StorageException">The book cannot be used; nothing has been changed.</exception>
    public static async Task<BookStore> OpenAsync(
        string directory, BookStoreOptions? options = null, CancellationToken cancellation = default)
    {
        options ??= new BookStoreOptions();
        var folder = DataFolder.At(directory);
        folder.Create();
        IBookDatabase database = options.Database is { } address
            ? new PostgresDatabase(folder, address, options)
            : SqliteDatabase.Of(folder, options);
        var store = new BookStore(folder, options, database);
        try
        {
            using var setup = await FolderLock.AloneAsync(folder.SetupLock, SetupPatience, cancellation) ?? throw Busy(folder);
            await database.PrepareAsync(store._backups, cancellation);
            await store.BackUpIfDueAsync(cancellation);
            return store;
        }
        catch
        {
            store.Dispose();
            throw;
        }
    }

    /// <summary>
    /// Puts a backup in the place of the book in a folder, which is kept as it was among the backups; or into a PostgreSQL
    /// database that holds no entries.
    /// </summary>
    /// <param name="directory">The data folder.</param>
    /// <param name="backup">The backup file. It is only read.</param>
    /// <param name="options">How the store behaves.</param>
    /// <param name="cancellation">Gives up before anything is changed.</param>
    /// <exception cref="StorageException">The backup cannot be used, or the book is open elsewhere, or holds entries; nothing has been changed.</exception>
    public static Task<RestoreResult> RestoreAsync(
        string directory, string backup, BookStoreOptions? options = null, CancellationToken cancellation = default)
    {
        options ??= new BookStoreOptions();
        return options.Database is { } address
            ? PostgresRestore.RunAsync(DataFolder.At(directory), address, backup, options, cancellation)
            : Task.Run(() => BookRestore.Run(DataFolder.At(directory), backup, options), cancellation);
    }

    /// <summary>
    /// Adds entries: set union by id, in one transaction. Returns only when they are safely on disk; after an error all may be
    /// given again. None of them was kept then, unless the connection to a PostgreSQL server was lost just at the end.
    /// </summary>
    /// <remarks>
    /// Should one id have been given to different entries, the one that comes first in the book's order is held, as in
    /// <see cref="Ledger"/>; when that is the later arrival it takes a new place in the order of commit.
    /// </remarks>
    /// <param name="operation">The operation, which every entry must belong to.</param>
    /// <param name="entries">The entries, in any order.</param>
    /// <param name="cancellation">Gives up before the commit.</param>
    /// <exception cref="ArgumentException">An entry belongs to another operation.</exception>
    /// <exception cref="StorageException">They could not be kept.</exception>
    public async Task<AppendResult> AppendAsync(
        string operation, IReadOnlyCollection<Entry> entries, CancellationToken cancellation = default)
    {
        var distinct = new Dictionary<Guid, Entry>(entries.Count);
        foreach (var entry in entries)
        {
            if (entry.Operation != operation)
                throw new ArgumentException($"Entry {entry.Id} belongs to operation '{entry.Operation}', not to '{operation}'.", nameof(entries));
            if (!distinct.TryGetValue(entry.Id.Value, out var twin) || Ledger.ComesBefore(entry, twin))
                distinct[entry.Id.Value] = entry;
        }

        var received = await NowAsync(cancellation);
        var accepted = await AppendRowsAsync(operation, [.. distinct.Values.Select(entry => entry.ToRow(received))], cancellation);
        return new AppendResult(accepted, entries.Count - accepted);
    }

    /// <summary>Reads on from a cursor in the order of commit.</summary>
    /// <param name="operation">The operation; one that is not known has no entries.</param>
    /// <param name="afterSequence">The cursor: 0 at first, then <see cref="EntryPage.Next"/>.</param>
    /// <param name="limit">The most entries wanted, 1 to <see cref="GreatestPage"/>. Fewer come when payloads are very long.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ArgumentOutOfRangeException">The cursor is negative, or the limit out of its range.</exception>
    public async Task<EntryPage> ReadAsync(
        string operation, long afterSequence, int limit, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(afterSequence);
        if (limit is < 1 or > GreatestPage)
            throw new ArgumentOutOfRangeException(nameof(limit), limit, $"A page holds 1 to {GreatestPage} entries.");
        return await _database.GuardAsync(async () =>
        {
            await using var context = await LookAsync(cancellation);
            await _database.ReadInOrderAsync(context, cancellation);
            var entries = new List<Entry>();
            var sequences = new List<long>();
            var next = afterSequence;
            var characters = 0;
            var rows = InOrder(context, operation, afterSequence).Take(limit + 1).AsAsyncEnumerable();
            await foreach (var row in rows.WithCancellation(cancellation))
            {
                if (entries.Count == limit || characters > GreatestPageCharacters)
                    return new EntryPage(entries, next, true, sequences);
                entries.Add(row.ToEntry());
                sequences.Add(row.Sequence);
                characters += row.Payload.Length;
                next = row.Sequence;
            }

            return new EntryPage(entries, next, false, sequences);
        });
    }

    /// <summary>Reads entries by their places in the order of commit.</summary>
    /// <param name="operation">The operation.</param>
    /// <param name="sequences">The places, each once, in order.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The entries in order; fewer when some are not there any more.</returns>
    public Task<IReadOnlyList<Entry>> ReadAtAsync(string operation, IReadOnlyList<long> sequences, CancellationToken cancellation = default) =>
        _database.GuardAsync<IReadOnlyList<Entry>>(async () =>
        {
            await using var context = await LookAsync(cancellation);
            var entries = new List<Entry>(sequences.Count);
            foreach (var some in sequences.Chunk(AtOnce))
            {
                // The operation is looked at here: an index on it would read far more rows than the places do.
                await foreach (var row in context.Entries.AsNoTracking().Where(e => some.Contains(e.Sequence)).OrderBy(e => e.Sequence).AsAsyncEnumerable().WithCancellation(cancellation))
                {
                    if (row.Operation == operation)
                        entries.Add(row.ToEntry());
                }
            }

            return entries;
        });

    /// <summary>Every entry of an operation in the order of commit, a page at a time.</summary>
    public async IAsyncEnumerable<Entry> ReadAllAsync(
        string operation, [EnumeratorCancellation] CancellationToken cancellation = default)
    {
        EntryPage page;
        var cursor = 0L;
        do
        {
            page = await ReadAsync(operation, cursor, GreatestPage, cancellation);
            foreach (var entry in page.Entries)
                yield return entry;
            cursor = page.Next;
        }
        while (page.More);
    }

    /// <summary>The operations in the store, by name, and how many entries each has.</summary>
    public Task<IReadOnlyList<OperationCount>> OperationsAsync(CancellationToken cancellation = default) =>
        _database.GuardAsync<IReadOnlyList<OperationCount>>(async () =>
        {
            await using var context = await LookAsync(cancellation);
            var counts = await context.Entries.GroupBy(e => e.Operation)
                .Select(group => new { Operation = group.Key, Entries = group.LongCount() })
                .OrderBy(count => count.Operation)
                .ToListAsync(cancellation);
            return counts.ConvertAll(count => new OperationCount(count.Operation, count.Entries));
        });

    /// <summary>
    /// The time as far as this book can know it: what the clock shows, but never before the last entry was taken in. A small
    /// computer without a battery may start with a clock that is years behind.
    /// </summary>
    public Task<DateTimeOffset> NowAsync(CancellationToken cancellation = default) =>
        _database.GuardAsync(async () =>
        {
            await using var context = await LookAsync(cancellation);
            var last = await context.Entries.OrderByDescending(e => e.Sequence).Select(e => e.ReceivedAt).FirstOrDefaultAsync(cancellation);
            var now = _options.Time.GetUtcNow();
            return now.ToUnixTimeMilliseconds() >= last ? now : DateTimeOffset.FromUnixTimeMilliseconds(last);
        });

    /// <summary>How many entries an operation has.</summary>
    public Task<long> CountAsync(string operation, CancellationToken cancellation = default) =>
        _database.GuardAsync(async () =>
        {
            await using var context = _database.Open();
            return await context.Entries.LongCountAsync(e => e.Operation == operation, cancellation);
        });

    /// <summary>Removes the operation <c>demo</c>, whose records are invented. No other operation can be removed.</summary>
    /// <returns>How many entries were removed.</returns>
    public async Task<int> RemoveDemoAsync(CancellationToken cancellation = default)
    {
        using var turn = await _writers.EnterAsync(Operations.Demo, cancellation);
        return await _database.GuardAsync(async () =>
        {
            await using var context = _database.Open();
            await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
            await _database.TakeTurnAsync(context, Operations.Demo, cancellation);
            var removed = await context.Entries.Where(e => e.Operation == Operations.Demo).ExecuteDeleteAsync(cancellation);
            await transaction.CommitAsync(CancellationToken.None);
            return removed;
        });
    }

    /// <summary>Makes a backup while the book stays in use: a whole, checked copy, flushed to the disk.</summary>
    /// <param name="target">The file to write, which must not exist; none for a dated one among the others.</param>
    /// <param name="cancellation">Gives up before it begins.</param>
    /// <exception cref="StorageException">It could not be made; the book is unharmed and no partial file is left.</exception>
    public Task<Backup> BackupAsync(string? target = null, CancellationToken cancellation = default) =>
        Task.Run(() => target is null ? _backups.Make() : _backups.MakeAt(target), cancellation);

    /// <summary>The dated backups, newest first.</summary>
    public IReadOnlyList<Backup> Backups() => _backups.List();

    /// <summary>Checks the whole database, indexes included.</summary>
    /// <returns>The number of entries.</returns>
    /// <exception cref="StorageException">It is damaged.</exception>
    public Task<long> CheckAsync(CancellationToken cancellation = default) =>
        _database.CheckAsync(cancellation);

    /// <summary>Closes the book.</summary>
    public void Dispose()
    {
        _database.Dispose();
        _writers.Dispose();
    }

    /// <summary>Adds rows of one operation, whose ids are all different, as <see cref="AppendAsync"/> does.</summary>
    /// <returns>How many the book did not hold before.</returns>
    internal async Task<int> AppendRowsAsync(string operation, IReadOnlyCollection<StoredEntry> rows, CancellationToken cancellation)
    {
        if (rows.Count == 0)
            return 0;
        using var turn = await _writers.EnterAsync(operation, cancellation);
        return await _database.GuardAsync(async () =>
        {
            await using var context = _database.Open();
            await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
            await _database.TakeTurnAsync(context, operation, cancellation);
            var accepted = await EntryUnion.AddAsync(_database, context, rows, cancellation);
            // From here on the commit must not be left half waited for.
            await transaction.CommitAsync(CancellationToken.None);
            return accepted;
        });
    }

    /// <summary>Rows of an operation in the order of commit.</summary>
    internal Task<List<StoredEntry>> ReadRowsAsync(string operation, long after, int limit, CancellationToken cancellation) =>
        _database.GuardAsync(async () =>
        {
            await using var context = _database.Open();
            await _database.ReadInOrderAsync(context, cancellation);
            return await InOrder(context, operation, after).Take(limit).ToListAsync(cancellation);
        });

    /// <summary>The rows an operation has under some ids.</summary>
    internal Task<Dictionary<Guid, StoredEntry>> FindRowsAsync(string operation, Guid[] ids, CancellationToken cancellation) =>
        _database.GuardAsync(async () =>
        {
            await using var context = _database.Open();
            return await EntryUnion.FindAsync(_database, context, operation, ids, cancellation);
        });

    private async Task<BookContext> LookAsync(CancellationToken cancellation)
    {
        var context = _database.Open();
        try
        {
            await _database.LookAsync(context, cancellation);
            return context;
        }
        catch
        {
            await context.DisposeAsync();
            throw;
        }
    }

    private static IQueryable<StoredEntry> InOrder(BookContext context, string operation, long after) =>
        context.Entries.AsNoTracking().Where(e => e.Operation == operation && e.Sequence > after).OrderBy(e => e.Sequence);

    private static StorageException Busy(DataFolder folder) => new(
        StorageFault.InUse, folder.Path,
        $"Another program has been opening the book for a minute in {folder.Path}. Nothing was changed. Wait until it is done and try again.");
}
