using System.Globalization;
using System.Net;
using Foundress.Server.Running;
using Foundress.Server.Security;
using Foundress.Storage;

namespace Foundress.Server;

/// <summary>What the server was asked for on its command line.</summary>
/// <param name="Port">The port, 1 to 65535; 0 takes any that is free.</param>
/// <param name="Data">The data folder.</param>
/// <param name="Demo">Whether to fill in the invented keeper's records.</param>
/// <param name="Database">The PostgreSQL database that holds the book; none for the SQLite file of the data folder.</param>
/// <param name="Forecasts">Whether forecasts of all apiaries are worked out ahead; only with <paramref name="Database"/>.</param>
public sealed record ServerOptions(int Port, string Data, bool Demo, PostgresAddress? Database = null, bool Forecasts = false)
{
    /// <summary>The environment variable that stands for <c>--database</c>: there a password is not seen in lists of programs.</summary>
    public const string DatabaseVariable = "FOUNDRESS_DATABASE";

    /// <summary>How it is run and watched.</summary>
    public RunningOptions Running { get; init; } = new();

    /// <summary>The port when none is named.</summary>
    public const int DefaultPort = 5210;

    /// <summary>The options and what they do.</summary>
    public const string Usage =
        "Options: --port N (default 5210), --data DIR (where the book is kept), --database SETTING (keeps the book in PostgreSQL, and its backups in DIR), --forecasts (works the forecasts of all apiaries out ahead, shared by all servers on one PostgreSQL database), --demo (adds an invented keeper's records); for several people --accounts, --listen ADDRESS, --name NAME, --certificate FILE, --key FILE, --proxy ADDRESS. " + RunningOptions.Usage;

    /// <summary>From where it can be reached: this computer only, unless asked.</summary>
    public Reach Reach { get; init; } = Reach.ThisComputer;

    /// <summary>Reads the command line: <c>--name value</c> or <c>--name=value</c>.</summary>
    /// <param name="args">The command line.</param>
    /// <param name="problem">What is wrong with it and what to do; null on success.</param>
    /// <returns>The options, or null.</returns>
    public static ServerOptions? TryParse(IReadOnlyList<string> args, out string? problem)
    {
        var options = new ServerOptions(DefaultPort, DataFolder.Default.Path, false);
        for (var n = 0; n < args.Count; n++)
        {
            var equals = args[n].IndexOf('=', StringComparison.Ordinal);
            var name = equals < 0 ? args[n] : args[n][..equals];
            if (name == "--demo" && equals < 0)
            {
                options = options with { Demo = true };
                continue;
            }

            if (name == "--forecasts" && equals < 0)
            {
                options = options with { Forecasts = true };
                continue;
            }

            if (name == "--accounts" && equals < 0)
            {
                options = options with { Reach = options.Reach with { Accounts = true } };
                continue;
            }

            if (name is not ("--port" or "--data" or "--database") && !Reach.Options.Contains(name))
                return Refuse($"'{args[n]}' is not an option. {Usage}", out problem);
            var value = equals >= 0 ? args[n][(equals + 1)..] : ++n < args.Count ? args[n] : "";
            if (value.Length == 0)
                return Refuse($"{name} needs a value. {Usage}", out problem);
            switch (name)
            {
                case "--port":
                    if (!int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var port) || port > 65_535)
                        return Refuse($"--port: '{value}' is not a port. Give a whole number from 1 to 65535, or 0 for any that is free.", out problem);
                    options = options with { Port = port };
                    break;
                case "--data":
                    options = options with { Data = value };
                    break;
                case "--database":
                    if (PostgresAddress.TryParse(value, out var wrong) is not { } database)
                        return Refuse($"--database: {wrong}", out problem);
                    options = options with { Database = database };
                    break;
                default:
                    options = options with { Reach = options.Reach.With(name, value, out problem) };
                    if (problem is not null)
                        return null;
                    break;
            }
        }

        problem = null;
        return options;
    }

    /// <summary>Takes the database from the environment where the command line names none.</summary>
    /// <param name="setting">What <see cref="DatabaseVariable"/> holds.</param>
    /// <param name="problem">What is wrong with it; null when nothing is.</param>
    public ServerOptions WithDatabase(string? setting, out string? problem)
    {
        problem = null;
        if (Database is not null || string.IsNullOrWhiteSpace(setting))
            return this;
        var database = PostgresAddress.TryParse(setting, out var wrong);
        if (wrong is not null)
            problem = $"{DatabaseVariable}: {wrong}";
        return this with { Database = database };
    }

    /// <summary>Looks at addresses that came by another way, the <c>ASPNETCORE_URLS</c> setting.</summary>
    /// <returns>What is wrong with them; null when nothing is.</returns>
    public static string? ProblemWithAddresses(string? addresses)
    {
        foreach (var address in (addresses ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (!Uri.TryCreate(address, UriKind.Absolute, out var uri) || !IsThisComputer(uri.Host))
                return $"ASPNETCORE_URLS: '{address}' can be reached from other computers. Take the setting away; where to listen is said with --listen ADDRESS.";
        }

        return null;
    }

    private static bool IsThisComputer(string host) =>
        host == "localhost" || (IPAddress.TryParse(host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip));

    private static ServerOptions? Refuse(string message, out string? problem)
    {
        problem = message;
        return null;
    }
}
