using Foundress.Storage.Model;
using Npgsql;
using NpgsqlTypes;

namespace Foundress.Storage.Postgres;

/// <summary>Adds rows that are not there yet, many with one statement: the way to the server costs more than the row.</summary>
internal static class PostgresInsert
{
    // Keeps one statement of long payloads from filling the memory of both ends.
    private const int GreatestRows = 1_000;
    private const int GreatestCharacters = 4_000_000;

    // Sequence numbers are given in the order of the rows, which are sorted first.
    private const string Sql =
        """
        INSERT INTO entries (operation, id, author, device, clock, kind, schema, payload, received_at)
        SELECT operation, id, author, device, clock, kind, schema, payload, received_at
        FROM unnest(@operation, @id, @author, @device, @clock, @kind, @schema, @payload, @received_at)
            WITH ORDINALITY AS given (operation, id, author, device, clock, kind, schema, payload, received_at, place)
        ORDER BY place
        ON CONFLICT (operation, id) DO NOTHING
        RETURNING id
        """;

    /// <summary>Adds rows of one operation, whose ids are all different, within a transaction.</summary>
    /// <returns>Those whose id the operation has already.</returns>
    public static async Task<IReadOnlyList<StoredEntry>> AddAsync(
        BookContext context, IReadOnlyCollection<StoredEntry> rows, CancellationToken cancellation)
    {
        var held = new List<StoredEntry>();
        var some = new List<StoredEntry>(Math.Min(rows.Count, GreatestRows));
        var characters = 0;
        foreach (var row in rows)
        {
            some.Add(row);
            characters += row.Payload.Length;
            if (some.Count < GreatestRows && characters < GreatestCharacters)
                continue;
            await AddSomeAsync(context, some, held, cancellation);
            some.Clear();
            characters = 0;
        }

        if (some.Count > 0)
            await AddSomeAsync(context, some, held, cancellation);
        return held;
    }

    private static async Task AddSomeAsync(BookContext context, List<StoredEntry> rows, List<StoredEntry> held, CancellationToken cancellation)
    {
        await using var command = await PostgresSql.CommandAsync(context, Sql, cancellation);
        Add(command, "operation", NpgsqlDbType.Text, rows, row => PostgresText.Encode(row.Operation));
        Add(command, "id", NpgsqlDbType.Uuid, rows, row => row.Id);
        Add(command, "author", NpgsqlDbType.Text, rows, row => PostgresText.Encode(row.Author));
        Add(command, "device", NpgsqlDbType.Text, rows, row => PostgresText.Encode(row.Device));
        Add(command, "clock", NpgsqlDbType.Text, rows, row => PostgresText.Encode(row.Clock));
        Add(command, "kind", NpgsqlDbType.Text, rows, row => PostgresText.Encode(row.Kind));
        Add(command, "schema", NpgsqlDbType.Integer, rows, row => row.Schema);
        Add(command, "payload", NpgsqlDbType.Text, rows, row => PostgresText.Encode(row.Payload));
        Add(command, "received_at", NpgsqlDbType.Bigint, rows, row => row.ReceivedAt);
        var added = new HashSet<Guid>(rows.Count);
        await using (var ids = await command.ExecuteReaderAsync(cancellation))
        {
            while (await ids.ReadAsync(cancellation))
                added.Add(ids.GetGuid(0));
        }

        if (added.Count < rows.Count)
            held.AddRange(rows.Where(row => !added.Contains(row.Id)));
    }

    private static void Add<T>(NpgsqlCommand command, string name, NpgsqlDbType type, List<StoredEntry> rows, Func<StoredEntry, T> value) =>
        command.Parameters.Add(new NpgsqlParameter<T[]>(name, NpgsqlDbType.Array | type) { TypedValue = [.. rows.Select(value)] });
}
