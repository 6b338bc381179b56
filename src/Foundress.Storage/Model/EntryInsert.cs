using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Foundress.Storage.Model;

/// <summary>
/// Adds rows that are not there yet. One prepared statement used again for every row is some thirty times as fast as
/// tracked entities, and its wording is common to SQLite and PostgreSQL.
/// </summary>
internal sealed class EntryInsert : IAsyncDisposable
{
    private static readonly string[] Columns =
        ["operation", "id", "author", "device", "clock", "kind", "schema", "payload", "received_at"];

    private readonly DbCommand _command;

    public EntryInsert(BookContext context)
    {
        _command = context.Database.GetDbConnection().CreateCommand();
        _command.Transaction = context.Database.CurrentTransaction!.GetDbTransaction();
        _command.CommandText =
            $"INSERT INTO entries ({string.Join(", ", Columns)}) VALUES ({string.Join(", ", Columns.Select(column => "@" + column))}) ON CONFLICT (operation, id) DO NOTHING";
        foreach (var column in Columns)
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
        object[] values =
            [row.Operation, row.Id, row.Author, row.Device, row.Clock, row.Kind, row.Schema, row.Payload, row.ReceivedAt];
        for (var n = 0; n < values.Length; n++)
            _command.Parameters[n].Value = values[n];
        return await _command.ExecuteNonQueryAsync(cancellation) == 1;
    }

    public ValueTask DisposeAsync() => _command.DisposeAsync();
}
