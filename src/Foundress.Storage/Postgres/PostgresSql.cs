using Foundress.Storage.Model;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;

namespace Foundress.Storage.Postgres;

/// <summary>Statements on a context's own connection and within its transaction.</summary>
internal static class PostgresSql
{
    public static async Task<NpgsqlCommand> CommandAsync(BookContext context, string sql, CancellationToken cancellation)
    {
        if (context.Database.CurrentTransaction is null)
            await context.Database.OpenConnectionAsync(cancellation);
        var command = ((NpgsqlConnection)context.Database.GetDbConnection()).CreateCommand();
        command.Transaction = (NpgsqlTransaction?)context.Database.CurrentTransaction?.GetDbTransaction();
        command.CommandText = sql;
        return command;
    }

    public static async Task<object?> ScalarAsync(BookContext context, string sql, CancellationToken cancellation)
    {
        await using var command = await CommandAsync(context, sql, cancellation);
        return await command.ExecuteScalarAsync(cancellation);
    }
}
