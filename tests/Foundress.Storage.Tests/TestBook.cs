using Foundress.PostgresForTests;

namespace Foundress.Storage.Tests;

/// <summary>A book for one test: a folder, and a database of its own where it lies in PostgreSQL.</summary>
internal sealed class TestBook : IAsyncDisposable
{
    private readonly PostgresCluster? _cluster;

    private TestBook(PostgresCluster? cluster, PostgresAddress? database) => (_cluster, Database) = (cluster, database);

    public TempFolder Folder { get; } = new();

    public PostgresAddress? Database { get; }

    /// <summary>Makes one.</summary>
    /// <param name="kind">The database system. Where there is none on this computer the test is skipped.</param>
    /// <param name="prepared">Whether the tables are there already, which saves time.</param>
    /// <param name="cluster">The PostgreSQL server; none for the one that all tests share.</param>
    public static async Task<TestBook> MakeAsync(DatabaseKind kind, bool prepared = true, PostgresCluster? cluster = null)
    {
        if (kind == DatabaseKind.Sqlite)
            return new TestBook(null, null);
        Assert.SkipWhen(PostgresPrograms.Missing is not null, PostgresPrograms.Missing ?? "");
        cluster ??= await PostgresCluster.Shared;
        return new TestBook(cluster, prepared ? await cluster.BookAsync() : await cluster.EmptyAsync());
    }

    public BookStoreOptions Options(BookStoreOptions? options = null) => (options ?? new BookStoreOptions()) with { Database = Database };

    public Task<BookStore> OpenAsync(BookStoreOptions? options = null) => BookStore.OpenAsync(Folder.Path, Options(options));

    /// <summary>Runs statements on the PostgreSQL database with every right.</summary>
    public Task<object?> ExecuteAsync(string sql) => _cluster!.ExecuteAsync(Database!.Database, sql);

    public async ValueTask DisposeAsync()
    {
        Folder.Dispose();
        if (Database is { } database)
            await _cluster!.DropAsync(database);
    }
}
