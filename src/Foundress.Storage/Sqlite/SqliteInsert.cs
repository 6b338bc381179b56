using System.Data.Common;
using Foundress.Storage.Model;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Foundress.Storage.Sqlite;

/// <summary>
/// Adds rows that are not there yet. One prepared statement used again for every row is some thirty times as fast as
/// tracked entities.
/// </summary>
internal sealed class SqliteInsert : IAsyncDisposable
{
    private readonly DbCommand _command;

    public SqliteInsert(BookContext context)
    {
        _command = context.Database.GetDbConnection().CreateCommand();
        _command.Transaction = context.Database.CurrentTransaction!.GetDbTransaction();
        _command.CommandText =
            $"INSERT INTO entries ({string.Join(", ", EntryRows.Columns)}) VALUES ({string.Join(", ", EntryRows.Columns.Select(column => "@" + column))}) ON CONFLICT (operation, id) DO NOTHING";
        foreach (var column in EntryRows.Columns)
        {
            var parameter = _command.CreateParameter();
            parameter.ParameterName = "@" + column;
            _command.Parameters.Add(parameter);
        }
    }

    /// <summary>Adds a row unless its operation already has its id.</summary>
    /// <returns>Whether it was added.</returns>
    public async Task<bool> TryAddAsync(StoredEntry row, CancellationToken cancellation)
    {
        var values = EntryRows.Values(row);
        for (var n = 0; n < values.Length; n++)
            _command.Parameters[n].Value = values[n];
        return await _command.ExecuteNonQueryAsync(cancellation) == 1;
    }

    public ValueTask DisposeAsync() => _command.DisposeAsync();
}
