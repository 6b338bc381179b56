using Foundress.Storage.Postgres;
using Npgsql;
using NpgsqlTypes;

namespace Foundress.Storage.Work;

/// <summary>
/// Work that several servers share out among themselves through PostgreSQL. A worker takes a piece for a time; when it is
/// killed, another takes the piece after that time. A result is kept once, from whoever has the piece then.
/// </summary>
/// <remarks>Safe for concurrent use by any number of servers. Rows are locked one by one (<c>FOR UPDATE SKIP LOCKED</c>), so workers do not wait for each other.</remarks>
public sealed class WorkQueue
{
    /// <summary>The greatest number of attempts at one piece: work that kills its worker must not kill all of them for ever.</summary>
    public const int GreatestAttempts = 5;

    private const string Add =
        """
        INSERT INTO work (operation, apiary, input_hash, model_version, input, state, attempts)
        SELECT operation, apiary, input_hash, model_version, input, 'waiting', 0
        FROM unnest(@operation, @apiary, @input_hash, @model_version, @input)
            WITH ORDINALITY AS given (operation, apiary, input_hash, model_version, input, place)
        ORDER BY place
        ON CONFLICT (operation, apiary, input_hash, model_version) DO NOTHING
        """;

    // What an apiary's book was, or the model, before: nobody waits for it any more.
    private const string Outdate =
        """
        DELETE FROM work USING unnest(@operation, @apiary, @input_hash, @model_version) AS given (operation, apiary, input_hash, model_version)
        WHERE work.operation = given.operation AND work.apiary = given.apiary AND work.state = 'waiting'
            AND (work.input_hash <> given.input_hash OR work.model_version <> given.model_version)
        """;

    private const string GiveUp =
        """
        UPDATE work SET state = 'failed', ended_at = clock_timestamp(),
            trouble = coalesce(trouble || ' ', '') || 'The last worker did not come back.'
        WHERE number IN (
            SELECT number FROM work
            WHERE state = 'leased' AND leased_until < clock_timestamp() AND attempts >= @greatest
            FOR UPDATE SKIP LOCKED)
        """;

    private const string Take =
        """
        WITH due AS MATERIALIZED (
            SELECT number FROM work
            WHERE (state = 'waiting' OR (state = 'leased' AND leased_until < clock_timestamp())) AND attempts < @greatest
            ORDER BY number LIMIT @most
            FOR UPDATE SKIP LOCKED)
        UPDATE work SET state = 'leased', lease = gen_random_uuid(), leased_until = clock_timestamp() + @time,
            worker = @worker, attempts = attempts + 1
        FROM due WHERE work.number = due.number
        RETURNING work.number, lease, operation, apiary, input_hash, model_version, input, attempts
        """;

    private readonly NpgsqlDataSource _source;
    private readonly PostgresAddress _address;

    internal WorkQueue(NpgsqlDataSource source, PostgresAddress address) => (_source, _address) = (source, address);

    /// <summary>
    /// Asks for work. What has been asked for before, done or not, is not asked for again.
    /// </summary>
    /// <param name="items">The work.</param>
    /// <param name="only">Whether whatever else waits for the same apiaries, with another input or model, is dropped: at most one piece an apiary is given then.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>How many pieces are new.</returns>
    public async Task<int> EnqueueAsync(IReadOnlyCollection<WorkItem> items, bool only = false, CancellationToken cancellation = default)
    {
        // Always in one order, so that two who ask for the same do not wait for each other crosswise.
        var sorted = items
            .OrderBy(item => item.Key.Operation, StringComparer.Ordinal).ThenBy(item => item.Key.Apiary)
            .ThenBy(item => item.Key.InputHash, StringComparer.Ordinal).ThenBy(item => item.Key.ModelVersion, StringComparer.Ordinal).ToArray();
        if (only)
            await RunAsync(Outdate, AddKeys, cancellation);
        return await RunAsync(Add, command =>
        {
            AddKeys(command);
            AddAll(command, "input", NpgsqlDbType.Text, sorted, item => PostgresText.Encode(item.Input));
        }, cancellation);

        void AddKeys(NpgsqlCommand command)
        {
            AddAll(command, "operation", NpgsqlDbType.Text, sorted, item => PostgresText.Encode(item.Key.Operation));
            AddAll(command, "apiary", NpgsqlDbType.Uuid, sorted, item => item.Key.Apiary);
            AddAll(command, "input_hash", NpgsqlDbType.Text, sorted, item => PostgresText.Encode(item.Key.InputHash));
            AddAll(command, "model_version", NpgsqlDbType.Text, sorted, item => PostgresText.Encode(item.Key.ModelVersion));
        }
    }

    /// <summary>Takes work that nobody has, or whose worker did not come back in time, the oldest first.</summary>
    /// <param name="worker">Who takes it, for people who look.</param>
    /// <param name="time">How long it may take. See <see cref="RenewAsync"/>.</param>
    /// <param name="most">The most pieces wanted, from 1.</param>
    /// <param name="cancellation">Gives up.</param>
    public Task<IReadOnlyList<WorkLease>> TakeAsync(string worker, TimeSpan time, int most = 1, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(time, TimeSpan.Zero);
        return PostgresErrors.GuardAsync<IReadOnlyList<WorkLease>>(_address, async () =>
        {
            await using var command = _source.CreateCommand(GiveUp + ";\n" + Take);
            command.Parameters.AddWithValue("greatest", GreatestAttempts);
            command.Parameters.AddWithValue("most", most);
            command.Parameters.AddWithValue("time", time);
            command.Parameters.AddWithValue("worker", PostgresText.Encode(worker));
            var taken = new List<WorkLease>();
            await using var rows = await command.ExecuteReaderAsync(cancellation);
            while (await rows.ReadAsync(cancellation))
            {
                string Text(int column) => PostgresText.Decode(rows.GetString(column));
                taken.Add(new WorkLease(rows.GetInt64(0), rows.GetGuid(1), new WorkKey(Text(2), rows.GetGuid(3), Text(4), Text(5)), Text(6), rows.GetInt32(7)));
            }

            taken.Sort((left, right) => left.Number.CompareTo(right.Number));
            return taken;
        });
    }

    /// <summary>Has the work for longer.</summary>
    /// <returns>False when another has it by now: stop working on it.</returns>
    public async Task<bool> RenewAsync(WorkLease lease, TimeSpan time, CancellationToken cancellation = default) => await RunAsync(
        "UPDATE work SET leased_until = clock_timestamp() + @time WHERE number = @number AND lease = @lease AND state = 'leased'",
        command =>
        {
            AddLease(command, lease);
            command.Parameters.AddWithValue("time", time);
        },
        cancellation) == 1;

    /// <summary>Hands in the result. Handing it in twice does no harm.</summary>
    /// <returns>False when another has the work by now, or it is done: this result was not kept.</returns>
    public async Task<bool> CompleteAsync(WorkLease lease, string result, CancellationToken cancellation = default) => await RunAsync(
        """
        UPDATE work SET state = 'done', result = CASE state WHEN 'done' THEN result ELSE @result END,
            ended_at = coalesce(ended_at, clock_timestamp()), trouble = NULL
        WHERE number = @number AND lease = @lease AND state IN ('leased', 'done')
        """,
        command =>
        {
            AddLease(command, lease);
            command.Parameters.AddWithValue("result", PostgresText.Encode(result));
        },
        cancellation) == 1;

    /// <summary>Gives the work back because it failed. It is tried again, up to <see cref="GreatestAttempts"/> times.</summary>
    /// <returns>False when another has the work by now.</returns>
    public async Task<bool> FailAsync(WorkLease lease, string trouble, CancellationToken cancellation = default) => await RunAsync(
        """
        UPDATE work SET state = CASE WHEN attempts >= @greatest THEN 'failed' ELSE 'waiting' END,
            ended_at = CASE WHEN attempts >= @greatest THEN clock_timestamp() END, leased_until = NULL, lease = NULL, trouble = @trouble
        WHERE number = @number AND lease = @lease AND state = 'leased'
        """,
        command =>
        {
            AddLease(command, lease);
            command.Parameters.AddWithValue("greatest", GreatestAttempts);
            command.Parameters.AddWithValue("trouble", PostgresText.Encode(trouble));
        },
        cancellation) == 1;

    /// <summary>What became of work.</summary>
    /// <returns>Null when it was never asked for, or was forgotten.</returns>
    public Task<WorkOutcome?> FindAsync(WorkKey key, CancellationToken cancellation = default) =>
        PostgresErrors.GuardAsync(_address, async () =>
        {
            await using var command = _source.CreateCommand(
                """
                SELECT state, result, trouble, attempts FROM work
                WHERE operation = @operation AND apiary = @apiary AND input_hash = @input_hash AND model_version = @model_version
                """);
            command.Parameters.AddWithValue("operation", PostgresText.Encode(key.Operation));
            command.Parameters.AddWithValue("apiary", key.Apiary);
            command.Parameters.AddWithValue("input_hash", PostgresText.Encode(key.InputHash));
            command.Parameters.AddWithValue("model_version", PostgresText.Encode(key.ModelVersion));
            await using var row = await command.ExecuteReaderAsync(cancellation);
            if (!await row.ReadAsync(cancellation))
                return null;
            string? Text(int column) => row.IsDBNull(column) ? null : PostgresText.Decode(row.GetString(column));
            return new WorkOutcome(Enum.Parse<WorkState>(row.GetString(0), ignoreCase: true), Text(1), Text(2), row.GetInt32(3));
        });

    /// <summary>How many pieces there are in each state; states without any are left out.</summary>
    public Task<IReadOnlyDictionary<WorkState, long>> CountAsync(CancellationToken cancellation = default) =>
        PostgresErrors.GuardAsync<IReadOnlyDictionary<WorkState, long>>(_address, async () =>
        {
            await using var command = _source.CreateCommand("SELECT state, count(*) FROM work GROUP BY state");
            await using var rows = await command.ExecuteReaderAsync(cancellation);
            var counts = new Dictionary<WorkState, long>();
            while (await rows.ReadAsync(cancellation))
                counts.Add(Enum.Parse<WorkState>(rows.GetString(0), ignoreCase: true), rows.GetInt64(1));
            return counts;
        });

    /// <summary>Forgets work that ended some time ago. Its results can be worked out again.</summary>
    /// <returns>How many pieces were forgotten.</returns>
    public Task<int> ForgetAsync(TimeSpan age, CancellationToken cancellation = default) => RunAsync(
        "DELETE FROM work WHERE state IN ('done', 'failed') AND ended_at < clock_timestamp() - @age",
        command => command.Parameters.AddWithValue("age", age), cancellation);

    private Task<int> RunAsync(string sql, Action<NpgsqlCommand> fill, CancellationToken cancellation) =>
        PostgresErrors.GuardAsync(_address, async () =>
        {
            await using var command = _source.CreateCommand(sql);
            fill(command);
            return await command.ExecuteNonQueryAsync(cancellation);
        });

    private static void AddLease(NpgsqlCommand command, WorkLease lease)
    {
        command.Parameters.AddWithValue("number", lease.Number);
        command.Parameters.AddWithValue("lease", lease.Token);
    }

    private static void AddAll<T>(NpgsqlCommand command, string name, NpgsqlDbType type, WorkItem[] items, Func<WorkItem, T> value) =>
        command.Parameters.Add(new NpgsqlParameter<T[]>(name, NpgsqlDbType.Array | type) { TypedValue = Array.ConvertAll(items, item => value(item)) });
}
