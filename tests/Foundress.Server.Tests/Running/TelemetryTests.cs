using Foundress.Server.Running;

namespace Foundress.Server.Tests.Running;

public class TelemetryTests
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Telemetry_AskedFor_SendsMeasurementsAndTracesWithoutANameInThem(bool bySetting)
    {
        using var data = new TempData();
        await using var collector = await Collector.StartAsync();
        var settings = new Dictionary<string, string> { ["OTEL_EXPORTER_OTLP_PROTOCOL"] = "http/protobuf" };
        if (bySetting)
            settings["OTEL_EXPORTER_OTLP_ENDPOINT"] = collector.Address;
        await using var server = await ProgramRun.ServerAsync(data.Path, settings, bySetting ? [] : ["--telemetry", collector.Address]);
        await NamedRequests.MakeAsync(server.Address);
        server.AskToEnd();
        Assert.Equal(ServerExit.Done, (await server.EndAsync()).Code);

        Assert.Equal(["/v1/metrics", "/v1/traces"], collector.Paths);
        var (measured, traced) = (collector.Text("/v1/metrics"), collector.Text("/v1/traces"));
        foreach (var word in new[] { "foundress.entries", "foundress.exchange.duration", "foundress.book.size", "http.server.request.duration", "dotnet.gc.", "/api/v1/operations/{operation}/entries", "accepted", "refused" })
            Assert.Contains(word, measured, StringComparison.Ordinal);
        foreach (var word in new[] { "POST /api/v1/operations/{operation}/entries", "http.response.status_code", "service.name", "foundress" })
            Assert.Contains(word, traced, StringComparison.Ordinal);
        foreach (var all in new[] { measured, traced })
        {
            Assert.DoesNotContain(NamedRequests.Name, all, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain(data.Path, all, StringComparison.Ordinal);
            Assert.DoesNotContain(Value(Environment.MachineName), all, StringComparison.Ordinal);
            Assert.DoesNotContain("127.0.0.1", all, StringComparison.Ordinal);
        }
    }

    // A name of few letters also turns up by chance among random ids; as a value of its own its length stands before it.
    private static string Value(string name) => name.Length > 5 ? name : (char)name.Length + name;

    [Fact]
    public async Task Telemetry_NobodyCollects_ServesAllTheSame()
    {
        using var data = new TempData();
        await using var server = await ProgramRun.ServerAsync(data.Path, null, "--telemetry", "http://127.0.0.1:1");
        await NamedRequests.MakeAsync(server.Address);
        server.AskToEnd();
        Assert.Equal(ServerExit.Done, (await server.EndAsync()).Code);
    }

    [Theory]
    [InlineData("--log loud", "", "--log: 'loud' is not one of plain, json.")]
    [InlineData("--log", "", "--log needs a value.")]
    [InlineData("", "FOUNDRESS_LOG=loud", "FOUNDRESS_LOG: 'loud'")]
    [InlineData("--telemetry collector", "", "--telemetry: 'collector' is not the address of a collector.")]
    [InlineData("", "OTEL_EXPORTER_OTLP_ENDPOINT=ftp://x", "OTEL_EXPORTER_OTLP_ENDPOINT: 'ftp://x'")]
    public void Options_Bad_AreNamed(string line, string setting, string words)
    {
        RunningOptions.Take(Split(line), Settings(setting), out _, out var problem);
        Assert.Contains(words, problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "", LogForm.Plain, null)]
    [InlineData("--log json", "", LogForm.Json, null)]
    [InlineData("--log=plain", "FOUNDRESS_LOG=json", LogForm.Plain, null)]
    [InlineData("", "FOUNDRESS_LOG=json", LogForm.Json, null)]
    [InlineData("--telemetry http://a:4317", "OTEL_EXPORTER_OTLP_ENDPOINT=http://b", LogForm.Plain, "http://a:4317/")]
    [InlineData("", "OTEL_EXPORTER_OTLP_ENDPOINT=http://b", LogForm.Plain, "http://b/")]
    [InlineData("", "OTEL_EXPORTER_OTLP_ENDPOINT=", LogForm.Plain, null)]
    [InlineData("--telemetry http://a:4317", "OTEL_SDK_DISABLED=true", LogForm.Plain, null)]
    public void Options_Good_AreTakenAndTheOthersLeft(string line, string setting, LogForm log, string? telemetry)
    {
        var options = RunningOptions.Take([.. Split(line), "--port", "0"], Settings(setting), out var rest, out var problem);
        Assert.Null(problem);
        Assert.Equal(["--port", "0"], rest);
        Assert.Equal((log, telemetry), (options.Log, options.Telemetry?.AbsoluteUri));
    }

    private static string[] Split(string line) => line.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private static Func<string, string?> Settings(string setting) =>
        name => setting.StartsWith(name + "=", StringComparison.Ordinal) ? setting[(name.Length + 1)..] : null;
}
