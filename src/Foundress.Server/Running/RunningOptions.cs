namespace Foundress.Server.Running;

/// <summary>What the one who runs the server asked for: logs, measurements, or only whether it is ready.</summary>
public sealed record RunningOptions
{
    /// <summary>The options and what they do.</summary>
    public const string Usage =
        "To run it as a service: --log plain|json, --telemetry URL (sends measurements to an OpenTelemetry collector), --health (asks a running server whether it is ready).";

    /// <summary>The setting that an OpenTelemetry collector's address is usually given by.</summary>
    public const string EndpointSetting = "OTEL_EXPORTER_OTLP_ENDPOINT";

    private const string LogSetting = "FOUNDRESS_LOG";

    /// <summary>How it writes what happens.</summary>
    public LogForm Log { get; init; }

    /// <summary>Where measurements are sent, by the OpenTelemetry protocol; null for nowhere.</summary>
    public Uri? Telemetry { get; init; }

    /// <summary>Whether the address was given by the usual setting, which the exporter then reads itself with all that belongs to it.</summary>
    public bool TelemetryBySetting { get; init; }

    /// <summary>Whether to ask a running server instead of being one.</summary>
    public bool Health { get; init; }

    /// <summary>Takes these options out of a command line.</summary>
    /// <param name="args">The command line.</param>
    /// <param name="setting">Reads an environment variable; null when it is not set.</param>
    /// <param name="rest">What is left of the command line.</param>
    /// <param name="problem">What is wrong and what to do; null on success.</param>
    public static RunningOptions Take(IReadOnlyList<string> args, Func<string, string?> setting, out string[] rest, out string? problem)
    {
        var options = new RunningOptions();
        var left = new List<string>();
        var (log, logName) = (setting(LogSetting) ?? "", LogSetting);
        var (telemetry, telemetryName) = (setting(EndpointSetting) ?? "", EndpointSetting);
        problem = null;
        for (var n = 0; n < args.Count; n++)
        {
            var equals = args[n].IndexOf('=', StringComparison.Ordinal);
            var name = equals < 0 ? args[n] : args[n][..equals];
            if (args[n] == "--health")
            {
                options = options with { Health = true };
                continue;
            }

            if (name is not ("--log" or "--telemetry"))
            {
                left.Add(args[n]);
                continue;
            }

            var value = equals >= 0 ? args[n][(equals + 1)..] : ++n < args.Count ? args[n] : "";
            if (value.Length == 0)
                problem ??= $"{name} needs a value. {Usage}";
            else if (name == "--log")
                (log, logName) = (value, name);
            else
                (telemetry, telemetryName) = (value, name);
        }

        rest = [.. left];
        if (log.Length > 0 && log is not ("plain" or "json"))
            problem ??= $"{logName}: '{log}' is not one of plain, json.";
        Uri? address = null;
        if (telemetry.Length > 0 && !(Uri.TryCreate(telemetry, UriKind.Absolute, out address) && address.Scheme is "http" or "https"))
            problem ??= $"{telemetryName}: '{telemetry}' is not the address of a collector. Write it as http://localhost:4317";
        if (string.Equals(setting("OTEL_SDK_DISABLED"), "true", StringComparison.OrdinalIgnoreCase))
            address = null;
        return options with
        {
            Log = log == "json" ? LogForm.Json : LogForm.Plain,
            Telemetry = address,
            TelemetryBySetting = telemetryName == EndpointSetting,
        };
    }
}
