using System.Reflection;
using OpenTelemetry.Exporter;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace Foundress.Server.Running;

/// <summary>Sends measurements and traces by the OpenTelemetry protocol, to where the one who runs the server asked; otherwise to nobody.</summary>
internal static class Telemetry
{
    public static void AddTelemetry(this IServiceCollection services, RunningOptions options)
    {
        if (options.Telemetry is null)
            return;
        var version = typeof(Telemetry).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];
        services.AddOpenTelemetry()
            // What the usual settings say comes last and wins. Neither the computer's name nor its user's is told.
            .ConfigureResource(resource => resource.Clear()
                .AddService("foundress", serviceVersion: version).AddTelemetrySdk().AddEnvironmentVariableDetector())
            .WithMetrics(metrics => metrics
                .AddMeter(ServerMeters.Name, "Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Server.Kestrel", "System.Runtime")
                .AddView(_ => new MetricStreamConfiguration { TagKeys = KnownTagsOnly.Known })
                .AddOtlpExporter(exporter => Direct(exporter, options, "v1/metrics")))
            .WithTracing(traces => traces
                .AddAspNetCoreInstrumentation(web => web.RecordException = false)
                // Before the exporter, which sends what the ones before it leave.
                .AddProcessor(new KnownTagsOnly())
                .AddOtlpExporter(exporter => Direct(exporter, options, "v1/traces")));
    }

    // The exporter adds the path by itself only to an address that it reads from the usual setting.
    private static void Direct(OtlpExporterOptions exporter, RunningOptions options, string path)
    {
        if (options.TelemetryBySetting)
            return;
        exporter.Endpoint = exporter.Protocol == OtlpExportProtocol.HttpProtobuf
            ? new Uri(options.Telemetry!.AbsoluteUri.TrimEnd('/') + "/" + path)
            : options.Telemetry!;
    }
}
