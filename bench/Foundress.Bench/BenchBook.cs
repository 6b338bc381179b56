using Foundress.PostgresForTests;
using Foundress.Storage;

namespace Foundress.Bench;

/// <summary>A book of its own for one measurement: in a file, or in a PostgreSQL database whose commits wait for the disk.</summary>
internal sealed class BenchBook : IAsyncDisposable
{
    private readonly BenchFolder _folder = new();
    private readonly PostgresCluster? _cluster;
    private readonly PostgresAddress? _address;

    private BenchBook(PostgresCluster? cluster, PostgresAddress? address) => (_cluster, _address) = (cluster, address);

    public static async Task<BenchBook> MakeAsync(PostgresCluster? cluster) =>
        new(cluster, cluster is null ? null : await cluster.BookAsync());

    public Task<BookStore> OpenAsync() =>
        BookStore.OpenAsync(_folder.Path, new BookStoreOptions { BackupAtStart = false, Database = _address, Patience = TimeSpan.FromMinutes(1) });

    public async ValueTask DisposeAsync()
    {
        _folder.Dispose();
        if (_cluster is not null)
            await _cluster.DropAsync(_address!);
    }
}
