using Foundress.Storage.Backups;
using Foundress.Storage.Model;
using Foundress.Storage.Work;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Foundress.Storage.Postgres;

/// <summary>A PostgreSQL database: made ready, and opened.</summary>
internal sealed class PostgresDatabase : IBookDatabase
{
    private static readonly TimeSpan SetupPatience = TimeSpan.FromMinutes(1);

    private readonly DataFolder _folder;
    private readonly BookStoreOptions _options;
    private readonly NpgsqlDataSource _source;
    private readonly DbContextOptions<PostgresBookContext> _context;

    // In a box, so that it is read and written whole.
    private volatile object _incarnation = Guid.Empty;

    public PostgresDatabase(DataFolder folder, PostgresAddress address, BookStoreOptions options)
    {
        _folder = folder;
        _options = options;
        Address = address;
        _source = new NpgsqlDataSourceBuilder(address.Connection).Build();
        Work = new WorkQueue(_source, address);
        _context = new DbContextOptionsBuilder<PostgresBookContext>().UseNpgsql(_source).Options;
    }

    public PostgresAddress Address { get; }

    public WorkQueue Work { get; }

    public Guid Incarnation => (Guid)_incarnation;

    public int Writers => 16;

    public BookContext Open() => new PostgresBookContext(_context);

    public Task<T> GuardAsync<T>(Func<Task<T>> work) => PostgresErrors.GuardAsync(Address, work);

    public Task PrepareAsync(BackupFolder backups, CancellationToken cancellation) => GuardAsync(async () =>
    {
        // Closed at the end and not kept for later use, so that the lock goes with it whatever happens.
        await using var connection = new NpgsqlConnection(Address.Alone);
        await connection.OpenAsync(cancellation);
        await using var context = new PostgresBookContext(
            new DbContextOptionsBuilder<PostgresBookContext>().UseNpgsql(connection).Options);
        // The lock's own patience decides, not that of the command.
        context.Database.SetCommandTimeout(0);
        await PostgresSql.ScalarAsync(
            context, FormattableString.Invariant($"SET lock_timeout = {(long)SetupPatience.TotalMilliseconds}; SELECT pg_advisory_lock({PostgresLocks.Setup})"), cancellation);
        var present = await PostgresInspection.OfAsync(context, Address, cancellation);
        if (present.Count == 0 && !_options.TakesOver && (backups.List().Count > 0 || File.Exists(_folder.Database)))
            throw PostgresErrors.Missing(Address, _folder);
        if (present.Count < context.Database.GetMigrations().Count())
        {
            if (present.Count > 0 && await context.Entries.AnyAsync(cancellation))
                backups.Make(BackupFolder.BeforeUpdate);
            // Changing a table may take longer than any other statement.
            context.Database.SetCommandTimeout(0);
            await context.Database.MigrateAsync(cancellation);
        }

        await LookAsync(context, cancellation);
        return true;
    });

    public async Task LookAsync(BookContext context, CancellationToken cancellation) =>
        _incarnation = await PostgresIncarnation.ReadAsync(context, cancellation);

    // Until the server has looked at a table that grew at once, as in the minute after a book was taken along, it believes
    // that a page is all there is, and would sort the whole rest of the operation for every page. The setting ends with
    // the transaction, and that with the context.
    public async Task ReadInOrderAsync(BookContext context, CancellationToken cancellation)
    {
        await context.Database.BeginTransactionAsync(cancellation);
        await PostgresSql.ScalarAsync(context, "SELECT set_config('enable_sort', 'off', true), set_config('enable_bitmapscan', 'off', true)", cancellation);
    }

    // Id by id through the index, whatever the server believes of the table.
    public Task<List<StoredEntry>> FindAsync(BookContext context, string operation, Guid[] ids, CancellationToken cancellation) =>
        context.Entries.FromSql(
            $"""
            SELECT found.* FROM unnest({ids}) AS wanted (id)
            CROSS JOIN LATERAL (SELECT * FROM entries WHERE operation = {PostgresText.Encode(operation)} AND id = wanted.id OFFSET 0) AS found
            """).AsNoTracking().ToListAsync(cancellation);

    // Sequence numbers are given out before the commit. Without a turn, a transaction with a lower number could commit after
    // one with a higher number, and a reader in between would never meet its entries. The lock is let go of only after the
    // commit can be seen. And an acknowledgement promises that the commit is on the disk, whatever the server's default.
    public async Task TakeTurnAsync(BookContext context, string operation, CancellationToken cancellation)
    {
        await using var command = await PostgresSql.CommandAsync(
            context,
            """
            SELECT set_config('lock_timeout', @patience, true),
                set_config('synchronous_commit', CASE WHEN current_setting('synchronous_commit') = 'off' THEN 'on' ELSE current_setting('synchronous_commit') END, true);
            SELECT pg_advisory_xact_lock(@lock);
            """,
            cancellation);
        command.Parameters.AddWithValue("patience", FormattableString.Invariant($"{Math.Max(1, (long)_options.Patience.TotalMilliseconds)}ms"));
        command.Parameters.AddWithValue("lock", PostgresLocks.Append(operation));
        await command.ExecuteNonQueryAsync(cancellation);
    }

    public Task<IReadOnlyList<StoredEntry>> AddNewAsync(
        BookContext context, IReadOnlyCollection<StoredEntry> rows, CancellationToken cancellation) =>
        PostgresInsert.AddAsync(context, rows, cancellation);

    public void Copy(string target) => PostgresCopy.Make(Address, target);

    // Every row is read whole, and counted once by the table and once by each index.
    public Task<long> CheckAsync(CancellationToken cancellation) => GuardAsync(async () =>
    {
        await using var context = Open();
        await using var transaction = await context.Database.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancellation);
        context.Database.SetCommandTimeout(0);
        async Task<long> CountAsync(string sql) => (long)(await PostgresSql.ScalarAsync(context, sql, cancellation))!;
        var entries = await CountAsync(
            "SET LOCAL enable_indexscan = off; SET LOCAL enable_indexonlyscan = off; SET LOCAL enable_bitmapscan = off; SELECT count(*) FILTER (WHERE md5(payload) IS NOT NULL) FROM entries");
        var indexed = await CountAsync(
            "SET LOCAL enable_seqscan = off; SET LOCAL enable_indexscan = on; SET LOCAL enable_indexonlyscan = on; SELECT count(*) FROM (SELECT operation, id FROM entries ORDER BY operation, id OFFSET 0) AS ordered");
        var numbered = await CountAsync("SELECT count(*) FROM (SELECT sequence FROM entries ORDER BY sequence OFFSET 0) AS ordered");
        return entries == indexed && entries == numbered
            ? entries
            : throw PostgresErrors.Damaged(Address, FormattableString.Invariant($"the table holds {entries} entries, its indexes {indexed} and {numbered}"));
    });

    public void Dispose() => _source.Dispose();
}
