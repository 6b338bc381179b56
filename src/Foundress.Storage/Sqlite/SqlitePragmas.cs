using System.Data.Common;
using System.Globalization;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Foundress.Storage.Sqlite;

/// <summary>
/// Settings that SQLite forgets when a connection closes, given again at every opening. With a write-ahead log and full
/// synchronisation a commit is on the disk before it is acknowledged, also when the power fails.
/// </summary>
internal sealed class SqlitePragmas(TimeSpan patience, int? greatestPages) : DbConnectionInterceptor
{
    private readonly string _sql = string.Create(
        CultureInfo.InvariantCulture,
        $"PRAGMA busy_timeout = {(long)patience.TotalMilliseconds}; PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;")
        + (greatestPages is { } pages ? string.Create(CultureInfo.InvariantCulture, $" PRAGMA max_page_count = {pages};") : "");

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = connection.CreateCommand();
        command.CommandText = _sql;
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = _sql;
        await command.ExecuteNonQueryAsync(cancellationToken);
    }
}
