using System.Runtime.CompilerServices;
using Foundress.Book;
using Foundress.Book.Journal;
using Foundress.Storage.Backups;
using Foundress.Storage.Model;
using Foundress.Storage.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Storage;

/// <summary>The journal on disk: every operation's entries in one database of a data folder.</summary>
/// <remarks>
/// Safe for concurrent use, also by several programs on one computer. Must not lie on a network share. Entries are only
/// ever added; the sole exception is <see cref="RemoveDemoAsync"/>.
/// </remarks>
public sealed partial class BookStore : IDisposable
{
    /// <summary>The most entries one page gives.</summary>
    public const int GreatestPage = 2_000;

    // Keeps a page of long payloads from filling the memory of a phone.
    private const int GreatestPageCharacters = 4_000_000;

    // Few enough ids for one statement.
    private const int LookUp = 500;

    private static readonly TimeSpan SetupPatience = TimeSpan.FromMinutes(1);

    private readonly BookStoreOptions _options;
    private readonly FolderLock _open;
    private readonly SqliteDatabase _database;
    private readonly BackupFolder _backups;
    private readonly SemaphoreSlim _writer = new(1, 1);

    private BookStore(DataFolder folder, BookStoreOptions options, FolderLock open)
    {
        Folder = folder;
        _options = options;
        _open = open;
        _database = new SqliteDatabase(folder, options);
        _backups = new BackupFolder(folder, options.Time);
    }

    /// <summary>Where the book lies.</summary>
    public DataFolder Folder { get; }

    /// <summary>Made anew whenever a backup is restored; cursors of <see cref="ReadAsync"/> hold within one incarnation.</summary>
    public Guid Incarnation { get; private set; }

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
        var open = FolderLock.TryShare(folder.OpenLock) ?? throw Busy(folder, "A backup is being restored in");
        var store = new BookStore(folder, options, open);
        try
        {
            using var setup = await FolderLock.AloneAsync(folder.SetupLock, SetupPatience, cancellation)
                ?? throw Busy(folder, "Another program has been opening the book for a minute in");
            store.Incarnation = await store._database.PrepareAsync(store._backups, cancellation);
            await store.BackUpIfDueAsync(cancellation);
            return store;
        }
        catch
        {
            store.Dispose();
            throw;
        }
    }

    /// <summary>Puts a backup in the place of the book; the book as it was is kept among the backups.</summary>
    /// <param name="directory">The data folder.</param>
    /// <param name="backup">The backup file. It is only read.</param>
    /// <param name="options">How the store behaves.</param>
    /// <exception cref="StorageException">The backup cannot be used, or the book is open elsewhere; nothing has been changed.</exception>
    public static RestoreResult Restore(string directory, string backup, BookStoreOptions? options = null) =>
        BookRestore.Run(DataFolder.At(directory), backup, options ?? new BookStoreOptions());

    /// <summary>
    /// Adds entries: set union by id, in one transaction. Returns only when they are safely on disk; after an error none of
    /// them was kept, and all may be given again.
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

        if (distinct.Count == 0)
            return default;
        await _writer.WaitAsync(cancellation);
        try
        {
            return await SqliteErrors.GuardAsync(Folder, async () =>
            {
                await using var context = _database.Open();
                // SQLite transactions begin here as immediate: no other program can write between the look-up and the insert.
                await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
                var accepted = await AddAsync(context, distinct.Values, cancellation);
                // From here on the commit must not be left half waited for.
                await transaction.CommitAsync(CancellationToken.None);
                return new AppendResult(accepted, entries.Count - accepted);
            });
        }
        finally
        {
            _writer.Release();
        }
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
        return await SqliteErrors.GuardAsync(Folder, async () =>
        {
            await using var context = _database.Open();
            var entries = new List<Entry>();
            var next = afterSequence;
            var characters = 0;
            var rows = InOrder(context, operation, afterSequence).Take(limit + 1).AsAsyncEnumerable();
            await foreach (var row in rows.WithCancellation(cancellation))
            {
                if (entries.Count == limit || characters > GreatestPageCharacters)
                    return new EntryPage(entries, next, true);
                entries.Add(row.ToEntry());
                characters += row.Payload.Length;
                next = row.Sequence;
            }

            return new EntryPage(entries, next, false);
        });
    }

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
        SqliteErrors.GuardAsync<IReadOnlyList<OperationCount>>(Folder, async () =>
        {
            await using var context = _database.Open();
            var counts = await context.Entries.GroupBy(e => e.Operation)
                .Select(group => new { Operation = group.Key, Entries = group.LongCount() })
                .OrderBy(count => count.Operation)
                .ToListAsync(cancellation);
            return counts.ConvertAll(count => new OperationCount(count.Operation, count.Entries));
        });

    /// <summary>How many entries an operation has.</summary>
    public Task<long> CountAsync(string operation, CancellationToken cancellation = default) =>
        SqliteErrors.GuardAsync(Folder, async () =>
        {
            await using var context = _database.Open();
            return await context.Entries.LongCountAsync(e => e.Operation == operation, cancellation);
        });

    /// <summary>Removes the operation <c>demo</c>, whose records are invented. No other operation can be removed.</summary>
    /// <returns>How many entries were removed.</returns>
    public async Task<int> RemoveDemoAsync(CancellationToken cancellation = default)
    {
        await _writer.WaitAsync(cancellation);
        try
        {
            return await SqliteErrors.GuardAsync(Folder, async () =>
            {
                await using var context = _database.Open();
                return await context.Entries.Where(e => e.Operation == Operations.Demo).ExecuteDeleteAsync(cancellation);
            });
        }
        finally
        {
            _writer.Release();
        }
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
        Task.Run(() => SqliteInspection.Of(Folder, Folder.Database, full: true).Entries, cancellation);

    /// <summary>Closes the book.</summary>
    public void Dispose()
    {
        _database.Dispose();
        _open.Dispose();
        _writer.Dispose();
    }

    private async Task<int> AddAsync(
        SqliteBookContext context, Dictionary<Guid, Entry>.ValueCollection entries, CancellationToken cancellation)
    {
        await using var insert = new EntryInsert(context);
        var received = _options.Time.GetUtcNow();
        var held = new List<Entry>();
        foreach (var entry in entries)
        {
            if (!await insert.TryAddAsync(entry.ToRow(received), cancellation))
                held.Add(entry);
        }

        var accepted = entries.Count - held.Count;
        foreach (var batch in held.Chunk(LookUp))
        {
            var ids = Array.ConvertAll(batch, entry => entry.Id.Value);
            var operation = batch[0].Operation;
            var rows = await context.Entries.AsNoTracking()
                .Where(e => e.Operation == operation && ids.Contains(e.Id)).ToDictionaryAsync(e => e.Id, cancellation);
            foreach (var entry in batch)
            {
                var row = rows[entry.Id.Value];
                var known = row.ToEntry();
                if (known == entry || !Ledger.ComesBefore(entry, known))
                    continue;
                await context.Entries.Where(e => e.Sequence == row.Sequence).ExecuteDeleteAsync(cancellation);
                await insert.TryAddAsync(entry.ToRow(received), cancellation);
                accepted++;
            }
        }

        return accepted;
    }

    private static IQueryable<StoredEntry> InOrder(SqliteBookContext context, string operation, long after) =>
        context.Entries.AsNoTracking().Where(e => e.Operation == operation && e.Sequence > after).OrderBy(e => e.Sequence);

    private static StorageException Busy(DataFolder folder, string what) => new(
        StorageFault.InUse, folder.Path, $"{what} {folder.Path}. Nothing was changed. Wait until it is done and try again.");
}
