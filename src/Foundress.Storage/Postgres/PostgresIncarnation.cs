using Foundress.Storage.Model;

namespace Foundress.Storage.Postgres;

/// <summary>
/// Keeps the incarnation true where a database is set back by other means than ours: a dump that was read back, a copy of
/// the server's files, a standby that took over without the last commits. Devices then have to send again what they hold.
/// </summary>
/// <remarks>
/// Beside the incarnation stands the place it was made for: the server's own id, the database's number and the timeline,
/// of which at least one differs after each of these.
/// </remarks>
internal static class PostgresIncarnation
{
    // A server that tells no one its id is taken at its database and timeline.
    private const string Here =
        """
        concat_ws(':',
            CASE WHEN has_function_privilege('pg_catalog.pg_control_system()', 'EXECUTE')
                THEN (SELECT system_identifier::text FROM pg_catalog.pg_control_system()) END,
            (SELECT oid::text FROM pg_catalog.pg_database WHERE datname = current_database()),
            substr(pg_catalog.pg_walfile_name(pg_catalog.pg_current_wal_lsn()), 1, 8))
        """;

    private const string Look = $"SELECT incarnation, place IS NOT DISTINCT FROM {Here} FROM book WHERE key = 1";

    private const string Settle =
        $"""
        INSERT INTO book AS held (key, incarnation, place) VALUES (1, @incarnation, {Here})
        ON CONFLICT (key) DO UPDATE SET incarnation = excluded.incarnation, place = excluded.place
            WHERE held.place IS DISTINCT FROM excluded.place
        """;

    /// <summary>The incarnation, made anew when the database is not where it was.</summary>
    public static async Task<Guid> ReadAsync(BookContext context, CancellationToken cancellation)
    {
        while (true)
        {
            await using (var look = await PostgresSql.CommandAsync(context, Look, cancellation))
            {
                await using var row = await look.ExecuteReaderAsync(cancellation);
                if (await row.ReadAsync(cancellation) && row.GetBoolean(1))
                    return row.GetGuid(0);
            }

            // Of several programs that see it at once one settles it; the others read what it wrote.
            await using var settle = await PostgresSql.CommandAsync(context, Settle, cancellation);
            settle.Parameters.AddWithValue("incarnation", Guid.NewGuid());
            await settle.ExecuteNonQueryAsync(cancellation);
        }
    }

    /// <summary>Makes the incarnation anew within a transaction.</summary>
    public static async Task RenewAsync(BookContext context, CancellationToken cancellation)
    {
        await using var renew = await PostgresSql.CommandAsync(
            context, $"INSERT INTO book (key, incarnation, place) VALUES (1, @incarnation, {Here}) ON CONFLICT (key) DO UPDATE SET incarnation = excluded.incarnation, place = excluded.place", cancellation);
        renew.Parameters.AddWithValue("incarnation", Guid.NewGuid());
        await renew.ExecuteNonQueryAsync(cancellation);
    }
}
