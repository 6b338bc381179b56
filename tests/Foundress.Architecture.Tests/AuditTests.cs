using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace Foundress.Architecture.Tests;

/// <summary>The audit of packages is only as good as its nose: it is given an index with something in it.</summary>
public sealed class AuditTests
{
    [Theory]
    [InlineData(3, 1, "critical severity; raise")]
    [InlineData(2, 1, "high or critical severity; raise")]
    [InlineData(1, 0, "no package has a known vulnerability of high or critical")]
    [InlineData(0, 0, "no package has a known vulnerability of high or critical")]
    public async Task Audit_PackageInTheIndex_FailsFromHighSeverityOnAndTellsOfEvery(int severity, int code, string words)
    {
        if (!OperatingSystem.IsLinux() && !OperatingSystem.IsMacOS())
            Assert.Skip("eng/audit is a script for bash.");
        var (ended, said) = await AuditAsync($$"""{"cscheck":[{"severity":{{severity}},"url":"https://advisories.example/1","versions":"(, 9.0.0)"}]}""");
        Assert.Equal(code, ended);
        Assert.Contains(words, said, StringComparison.Ordinal);
        Assert.Contains("https://advisories.example/1", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Audit_NothingInTheIndex_SaysThatItLooked()
    {
        if (!OperatingSystem.IsLinux() && !OperatingSystem.IsMacOS())
            Assert.Skip("eng/audit is a script for bash.");
        var (ended, said) = await AuditAsync("""{"another.package":[{"severity":3,"url":"https://advisories.example/1","versions":"(, 9.0.0)"}]}""");
        Assert.Equal((0, "audit: no package has a known vulnerability of high or critical severity.\n"), (ended, said));
    }

    [Fact]
    public async Task Audit_NoIndex_SaysThatItDidNotLook()
    {
        if (!OperatingSystem.IsLinux() && !OperatingSystem.IsMacOS())
            Assert.Skip("eng/audit is a script for bash.");
        var (ended, said) = await AuditAsync(null);
        Assert.Equal(0, ended);
        Assert.Contains("NOT LOOKED UP", said, StringComparison.Ordinal);
        Assert.DoesNotContain("no package", said, StringComparison.Ordinal);
    }

    // A project of one package that every build has fetched, and a source of advisories of our own.
    private static async Task<(int Code, string Said)> AuditAsync(string? index)
    {
        using var free = new TcpListener(IPAddress.Loopback, 0);
        free.Start();
        var address = $"http://127.0.0.1:{((IPEndPoint)free.LocalEndpoint).Port}/";
        free.Stop();
        using var source = new HttpListener { Prefixes = { address } };
        source.Start();
        var serving = ServeAsync(source, address, index);
        var folder = Directory.CreateTempSubdirectory("foundress-audit-").FullName;
        try
        {
            await File.WriteAllTextAsync(Path.Combine(folder, "p.csproj"),
                """<Project Sdk="Microsoft.NET.Sdk"><PropertyGroup><TargetFramework>net10.0</TargetFramework></PropertyGroup><ItemGroup><PackageReference Include="CsCheck" Version="5.0.1" /></ItemGroup></Project>""");
            await File.WriteAllTextAsync(Path.Combine(folder, "NuGet.config"),
                $"""<configuration><auditSources><clear /><add key="ours" value="{address}index.json" allowInsecureConnections="true" /></auditSources></configuration>""");
            using var audit = Process.Start(new ProcessStartInfo("bash")
            {
                ArgumentList = { Path.Combine(SourceTree.Root.FullName, "eng", "audit"), Path.Combine(folder, "p.csproj") },
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                WorkingDirectory = folder,
                Environment = { ["NUGET_HTTP_CACHE_PATH"] = Path.Combine(folder, "cache") },
            })!;
            var errors = audit.StandardError.ReadToEndAsync();
            var said = await audit.StandardOutput.ReadToEndAsync() + await errors;
            await audit.WaitForExitAsync();
            return (audit.ExitCode, said);
        }
        finally
        {
            source.Stop();
            await serving;
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task ServeAsync(HttpListener source, string address, string? index)
    {
        var resources = index is null ? "" : $$"""{"@id":"{{address}}vulnerabilities.json","@type":"VulnerabilityInfo/6.7.0"}""";
        var answers = new Dictionary<string, string?>
        {
            ["/index.json"] = $$"""{"version":"3.0.0","resources":[{{resources}}]}""",
            ["/vulnerabilities.json"] = $$"""[{"@name":"base","@id":"{{address}}base.json","@updated":"2026-01-01T00:00:00Z","comment":""}]""",
            ["/base.json"] = index,
        };
        while (true)
        {
            HttpListenerContext call;
            try
            {
                call = await source.GetContextAsync();
            }
            catch (Exception error) when (error is HttpListenerException or ObjectDisposedException)
            {
                return;
            }

            var answer = answers.GetValueOrDefault(call.Request.Url!.AbsolutePath);
            call.Response.StatusCode = answer is null ? 404 : 200;
            call.Response.ContentType = "application/json";
            await call.Response.OutputStream.WriteAsync(Encoding.UTF8.GetBytes(answer ?? ""));
            call.Response.Close();
        }
    }
}
