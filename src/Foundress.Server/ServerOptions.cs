using System.Globalization;
using System.Net;
using Foundress.Server.Running;
using Foundress.Storage;

namespace Foundress.Server;

/// <summary>What the server was asked for on its command line.</summary>
/// <param name="Port">The port, 1 to 65535; 0 takes any that is free.</param>
/// <param name="Data">The data folder.</param>
/// <param name="Demo">Whether to fill in the invented keeper's records.</param>
public sealed record ServerOptions(int Port, string Data, bool Demo)
{
    /// <summary>How it is run and watched.</summary>
    public RunningOptions Running { get; init; } = new();

    /// <summary>The port when none is named.</summary>
    public const int DefaultPort = 5210;

    /// <summary>The options and what they do.</summary>
    public const string Usage =
        "Options: --port N (default 5210), --data DIR (where the book is kept), --address localhost, --demo (adds an invented keeper's records). " + RunningOptions.Usage;

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

            if (name is not ("--port" or "--data" or "--address"))
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
                default:
                    if (!IsThisComputer(value))
                        return Refuse(NotThisComputer("--address", value), out problem);
                    break;
            }
        }

        problem = null;
        return options;
    }

    /// <summary>Looks at addresses that came by another way, the <c>ASPNETCORE_URLS</c> setting.</summary>
    /// <returns>What is wrong with them; null when nothing is.</returns>
    public static string? ProblemWithAddresses(string? addresses)
    {
        foreach (var address in (addresses ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (!Uri.TryCreate(address, UriKind.Absolute, out var uri) || !IsThisComputer(uri.Host))
                return NotThisComputer("ASPNETCORE_URLS", address);
        }

        return null;
    }

    private static bool IsThisComputer(string host) =>
        host == "localhost" || (IPAddress.TryParse(host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip));

    private static string NotThisComputer(string name, string value) =>
        $"{name}: '{value}' can be reached from other computers. This server has no accounts, so anyone could read and write the book. Use localhost.";

    private static ServerOptions? Refuse(string message, out string? problem)
    {
        problem = message;
        return null;
    }
}
