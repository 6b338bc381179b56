using System.Diagnostics;
using OpenTelemetry;

namespace Foundress.Server.Running;

/// <summary>
/// Takes everything off a trace that is not on a short list before it is sent: paths and queries name operations and
/// apiaries, and what callers send of themselves is theirs.
/// </summary>
internal sealed class KnownTagsOnly : BaseProcessor<Activity>
{
    /// <summary>What may stay on traces and measurements.</summary>
    internal static readonly string[] Known =
    [
        "http.request.method", "http.response.status_code", "http.route", "url.scheme", "network.protocol.name", "network.protocol.version",
        "error.type", "outcome", "direction",
        // The runtime's and the web server's own.
        "gc.heap.generation", "dotnet.gc.heap.generation", "cpu.mode", "network.transport", "network.type", "tls.protocol.version",
    ];

    public override void OnEnd(Activity data)
    {
        foreach (var tag in data.TagObjects.Where(tag => Array.IndexOf(Known, tag.Key) < 0).ToArray())
            data.SetTag(tag.Key, null);
        data.TraceStateString = null;
        data.SetStatus(data.Status);
    }
}
