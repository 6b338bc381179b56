using Foundress.Storage.Model;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Storage.Postgres;

/// <summary>What a PostgreSQL database turned out to be, looked at without changing it.</summary>
internal static class PostgresInspection
{
    // Tables and the like that do not belong to an extension.
    private const string OthersTables =
        """
        SELECT c.relname FROM pg_catalog.pg_class AS c
        WHERE c.relnamespace = (SELECT oid FROM pg_catalog.pg_namespace WHERE nspname = current_schema())
            AND c.relkind IN ('r', 'p', 'v', 'm', 'f', 'S')
            AND NOT EXISTS (SELECT FROM pg_catalog.pg_depend AS d WHERE d.classid = 'pg_catalog.pg_class'::regclass AND d.objid = c.oid AND d.deptype = 'e')
        ORDER BY c.relname LIMIT 1
        """;

    /// <summary>The migrations the database has been through; none when it is empty.</summary>
    /// <exception cref="StorageException">It is another program's, or a newer version's, or cannot hold a book.</exception>
    public static async Task<IReadOnlyList<string>> OfAsync(BookContext context, PostgresAddress address, CancellationToken cancellation)
    {
        var encoding = (string)(await PostgresSql.ScalarAsync(context, "SHOW server_encoding", cancellation))!;
        if (encoding != "UTF8")
            throw PostgresErrors.NotABook(address, $"its texts are kept as {encoding}, which lacks characters that names may have; UTF8 is needed");
        if ((bool)(await PostgresSql.ScalarAsync(context, "SELECT pg_catalog.pg_is_in_recovery()", cancellation))!)
            throw PostgresErrors.CannotWrite(address, "its server is a standby");
        if ((string)(await PostgresSql.ScalarAsync(context, "SHOW transaction_read_only", cancellation))! == "on")
            throw PostgresErrors.CannotWrite(address, "it, or this user in it, is set to read only (default_transaction_read_only)");

        IReadOnlyList<string> present = [.. await context.Database.GetAppliedMigrationsAsync(cancellation)];
        var known = context.Database.GetMigrations().ToList();
        if (present.Count == 0 && await PostgresSql.ScalarAsync(context, OthersTables, cancellation) is string other && !other.StartsWith("__EF", StringComparison.Ordinal))
            throw PostgresErrors.NotABook(address, $"it holds the table '{other}' of another program");
        if (present.Count > 0 && !present.Contains(known[0]))
            throw PostgresErrors.NotABook(address, "it belongs to another program");
        return present.FirstOrDefault(migration => !known.Contains(migration)) is { } unknown
            ? throw PostgresErrors.Newer(address, unknown)
            : present;
    }
}
