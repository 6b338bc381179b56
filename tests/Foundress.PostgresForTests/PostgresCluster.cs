using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Foundress.Storage;
using Npgsql;

namespace Foundress.PostgresForTests;

/// <summary>
/// A PostgreSQL server of the tests' own, on a free port and in a folder of its own. It ends with this process, however that
/// ends: a small script holds the server and stops it when nothing is at the other end any more.
/// </summary>
public sealed class PostgresCluster : IAsyncDisposable
{
    /// <summary>The user the tests enter as: the owner of its databases, with no other rights.</summary>
    public const string User = "keeper";

    private const string Chief = "chief";

    // Reads "crash" and "start" from its input and answers "done"; at the end of the input stops the server and removes it.
    private const string Script =
        """
        set -eu
        trap '' INT TERM HUP
        bin=$1; dir=$2; port=$3; options=$4
        cd "$dir"
        as() { if [ "$(id -u)" = 0 ]; then setpriv --reuid postgres --regid postgres --clear-groups -- "$@"; else "$@"; fi; }
        [ "$(id -u)" != 0 ] || chown -R postgres "$dir"
        end() { as "$bin/pg_ctl" -D "$dir/data" -m immediate stop >/dev/null 2>&1 || true; cd /; rm -rf "$dir"; }
        trap end EXIT
        start() { as "$bin/pg_ctl" -D "$dir/data" -w -t 120 -l "$dir/log" -o "-c listen_addresses=127.0.0.1 -c port=$port -c unix_socket_directories= $options" start >/dev/null 2>&1 </dev/null || { cat "$dir/log" >&2; exit 1; }; }
        as "$bin/initdb" -D "$dir/data" --username=chief --pwfile="$dir/password" --auth=scram-sha-256 --encoding=UTF8 --locale=C --no-sync >/dev/null
        start
        echo done
        while read -r what; do
          case $what in
            crash) as "$bin/pg_ctl" -D "$dir/data" -m immediate stop >/dev/null 2>&1 ;;
            start) start ;;
          esac
          echo done
        done
        """;

    private static readonly Lazy<Task<PostgresCluster>> TheShared = new(() => StartAsync(durable: false));

    private readonly Process _holder;
    private readonly string _password;
    private readonly SemaphoreSlim _making = new(1, 1);
    private string? _template;
    private int _made;

    private PostgresCluster(Process holder, int port, string password) => (_holder, Port, _password) = (holder, port, password);

    /// <summary>The server that all tests of one process share. It does not wait for the disk.</summary>
    public static Task<PostgresCluster> Shared => TheShared.Value;

    /// <summary>Its port on this computer.</summary>
    public int Port { get; }

    /// <summary>Starts another server.</summary>
    /// <param name="durable">Whether commits wait for the disk, as they do outside of tests.</param>
    public static async Task<PostgresCluster> StartAsync(bool durable)
    {
        if (PostgresPrograms.Missing is { } missing)
            throw new InvalidOperationException(missing);
        var folder = Directory.CreateTempSubdirectory("foundress-postgres-");
        var password = Guid.NewGuid().ToString("N");
        await File.WriteAllTextAsync(Path.Combine(folder.FullName, "password"), password + "\n");
        var port = FreePort();
        var options = "-c max_connections=200 -c shared_buffers=64MB" + (durable ? "" : " -c fsync=off -c full_page_writes=off");
        var holder = Process.Start(new ProcessStartInfo("/bin/sh")
        {
            ArgumentList = { "-c", Script, "sh", PostgresPrograms.Folder!, folder.FullName, port.ToString(CultureInfo.InvariantCulture), options },
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var cluster = new PostgresCluster(holder, port, password);
        await cluster.AnswerAsync();
        await cluster.ExecuteAsync("postgres", $"CREATE ROLE {User} LOGIN PASSWORD '{password}'");
        return cluster;
    }

    /// <summary>Stops the server in the middle of whatever it is doing, as when its process is killed.</summary>
    public Task CrashAsync() => TellAsync("crash");

    /// <summary>Starts it again.</summary>
    public Task StartAgainAsync() => TellAsync("start");

    /// <summary>Makes a database with an empty book.</summary>
    public async Task<PostgresAddress> BookAsync()
    {
        await _making.WaitAsync();
        try
        {
            if (_template is null)
            {
                var folder = Directory.CreateTempSubdirectory("foundress-test-");
                var template = await EmptyAsync();
                using (await BookStore.OpenAsync(folder.FullName, new BookStoreOptions { Database = template }))
                    _template = template.Database;
                folder.Delete(recursive: true);
            }

            return await MakeAsync($"TEMPLATE {_template}");
        }
        finally
        {
            _making.Release();
        }
    }

    /// <summary>Makes an empty database.</summary>
    /// <param name="how">Clauses of <c>CREATE DATABASE</c>.</param>
    public Task<PostgresAddress> EmptyAsync(string how = "") => MakeAsync(how);

    /// <summary>Removes a database, whoever still has it open.</summary>
    public Task DropAsync(PostgresAddress address) => ExecuteAsync("postgres", $"DROP DATABASE IF EXISTS {address.Database} WITH (FORCE)");

    /// <summary>The way to a database of this server.</summary>
    public PostgresAddress Address(string database, string user = User, string? password = null) =>
        PostgresAddress.TryParse(Setting(database, user, password), out var problem) ?? throw new InvalidOperationException(problem);

    /// <summary>The setting that leads to a database of this server.</summary>
    public string Setting(string database, string user = User, string? password = null) => FormattableString.Invariant(
        $"Host=127.0.0.1;Port={Port};Database={database};Username={user};Password={password ?? _password};Timeout=15");

    /// <summary>Runs statements with every right.</summary>
    public async Task<object?> ExecuteAsync(string database, string sql)
    {
        await using var connection = new NpgsqlConnection(Setting(database, Chief) + ";Pooling=false");
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 120 };
        return await command.ExecuteScalarAsync();
    }

    public async ValueTask DisposeAsync()
    {
        _holder.StandardInput.Close();
        await _holder.WaitForExitAsync();
        _holder.Dispose();
        _making.Dispose();
    }

    private async Task<PostgresAddress> MakeAsync(string how)
    {
        var name = FormattableString.Invariant($"book_{Interlocked.Increment(ref _made)}");
        await ExecuteAsync("postgres", $"CREATE DATABASE {name} OWNER {User} {how}");
        return Address(name);
    }

    private async Task TellAsync(string what)
    {
        await _holder.StandardInput.WriteLineAsync(what);
        await _holder.StandardInput.FlushAsync();
        await AnswerAsync();
    }

    private async Task AnswerAsync()
    {
        if (await _holder.StandardOutput.ReadLineAsync() != "done")
            throw new InvalidOperationException("The PostgreSQL server of the tests did not start or stop: " + await _holder.StandardError.ReadToEndAsync());
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
