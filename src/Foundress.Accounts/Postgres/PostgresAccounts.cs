using Foundress.Accounts.Model;
using Foundress.Storage;
using Foundress.Storage.Postgres;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;

namespace Foundress.Accounts.Postgres;

/// <summary>
/// Accounts in the PostgreSQL database of the book, shared by all servers on it. Nothing of them is kept in a server's memory
/// from one request to the next, except the keys that cookies are sealed with.
/// </summary>
internal sealed class PostgresAccounts : IAccountsBackend
{
    private const int Patience = 15_000;
    private const int SetupPatience = 60_000;

    private const string History = "__EFMigrationsHistory";

    private readonly PostgresAddress _address;
    private readonly NpgsqlDataSource _source;
    private readonly DbContextOptions<PostgresAccountsContext> _options;

    public PostgresAccounts(PostgresAddress address)
    {
        _address = address;
        _source = new NpgsqlDataSourceBuilder(address.Connection).Build();
        _options = new DbContextOptionsBuilder<PostgresAccountsContext>()
            .UseNpgsql(_source, options => options.MigrationsHistoryTable(History, PostgresAccountsContext.Schema)).Options;
    }

    public string Place => AccountsTexts.FormatInDatabase(_address);

    /// <summary>Whether a database has accounts.</summary>
    /// <exception cref="StorageException">It cannot be reached or entered.</exception>
    public static Task<bool> AreInAsync(PostgresAddress address, CancellationToken cancellation) => PostgresErrors.GuardAsync(address, async () =>
    {
        await using var connection = new NpgsqlConnection(address.Alone);
        await connection.OpenAsync(cancellation);
        await using var command = new NpgsqlCommand($"SELECT to_regclass('{PostgresAccountsContext.Schema}.\"{History}\"') IS NOT NULL", connection);
        return (bool)(await command.ExecuteScalarAsync(cancellation))!;
    });

    /// <summary>The options of a context on a connection.</summary>
    public static DbContextOptions<PostgresAccountsContext> Options(DbContextOptionsBuilder<PostgresAccountsContext> builder, string connection) =>
        builder.UseNpgsql(connection, options => options.MigrationsHistoryTable(History, PostgresAccountsContext.Schema)).Options;

    public AccountsContext Open() => new PostgresAccountsContext(_options);

    public Task PrepareAsync(CancellationToken cancellation) => PostgresErrors.GuardAsync(_address, async () =>
    {
        await AloneInSetupAsync(() => MakeReadyAsync(cancellation), cancellation);
        return true;
    });

    public async Task AloneInSetupAsync(Func<Task> work, CancellationToken cancellation)
    {
        // Closed at the end and not kept for later use, so that the lock goes with it whatever happens.
        await using var connection = new NpgsqlConnection(_address.Alone);
        await connection.OpenAsync(cancellation);
        await using (var command = new NpgsqlCommand(FormattableString.Invariant($"SET lock_timeout = {SetupPatience}; SELECT pg_advisory_lock({PostgresLocks.AccountsSetup})"), connection) { CommandTimeout = 0 })
            await command.ExecuteNonQueryAsync(cancellation);
        await work();
    }

    // PostgreSQL would let two run side by side and refuse one at the end; here the second waits, as with a file. What is
    // acknowledged is on the disk, whatever the server's default: a device that was taken off must not come back.
    public async Task<IDbContextTransaction> BeginAloneAsync(AccountsContext context, CancellationToken cancellation)
    {
        var transaction = await context.Database.BeginTransactionAsync(cancellation);
        try
        {
            await context.Database.ExecuteSqlRawAsync(
                FormattableString.Invariant(
                    $"""
                    SELECT set_config('lock_timeout', '{Patience}ms', true),
                        set_config('synchronous_commit', CASE WHEN current_setting('synchronous_commit') = 'off' THEN 'on' ELSE current_setting('synchronous_commit') END, true);
                    SELECT pg_advisory_xact_lock({PostgresLocks.Accounts});
                    """),
                cancellation);
            return transaction;
        }
        catch
        {
            await transaction.DisposeAsync();
            throw;
        }
    }

    public void Dispose() => _source.Dispose();

    private async Task MakeReadyAsync(CancellationToken cancellation)
    {
        await using var context = Open();
        var known = context.Database.GetMigrations().ToHashSet(StringComparer.Ordinal);
        var present = (await context.Database.GetAppliedMigrationsAsync(cancellation)).ToList();
        if (present.Find(migration => !known.Contains(migration)) is { } unknown)
            throw PostgresErrors.Newer(_address, unknown);
        if (present.Count == known.Count)
            return;
        // Changing a table may take longer than any other statement.
        context.Database.SetCommandTimeout(0);
        await context.Database.MigrateAsync(cancellation);
    }
}
