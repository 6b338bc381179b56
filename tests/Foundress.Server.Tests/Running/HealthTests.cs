using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text.Json;
using Foundress.Server.Running;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Foundress.Server.Tests.Running;

public class HealthTests
{
    [Fact]
    public async Task Ready_BookHeldByAnotherProgram_SaysSoUntilItIsFree()
    {
        await using var site = new Site();
        await site.InitializeAsync();
        await using (var other = new SqliteConnection($"Data Source={site.Server.Store.Folder.Database};Pooling=false"))
        {
            await other.OpenAsync();
            await using var held = other.BeginTransaction();
            var answer = await site.Caller.GetAsync("health/ready");
            await Problem.IsAsync(HttpStatusCode.ServiceUnavailable, "Another program holds the book.", answer);
            Assert.DoesNotContain(site.Server.Store.Folder.Path, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
            Assert.Equal(HttpStatusCode.OK, (await site.Caller.GetAsync("health/live")).StatusCode);
        }

        Assert.Equal("ready", (await site.Caller.GetFromJsonAsync<JsonElement>("health/ready")).GetProperty("status").GetString());
    }

    [Fact]
    public async Task Ready_AskedByManyAtOnce_AnswersAll()
    {
        await using var site = new Site();
        await site.InitializeAsync();
        var answers = await Task.WhenAll(Enumerable.Range(0, 40).Select(_ => site.Caller.GetAsync("health/ready")));
        Assert.All(answers, answer => Assert.Equal(HttpStatusCode.OK, answer.StatusCode));
    }

    [Fact]
    public async Task Ready_WhileShuttingDown_SaysSo()
    {
        await using var site = new Site();
        await site.InitializeAsync();
        var lifetime = site.Server.Services.GetRequiredService<IHostApplicationLifetime>();
        var asked = new TaskCompletionSource<HttpResponseMessage>();
        // Here the end has begun and the server still listens.
        lifetime.ApplicationStopping.Register(() => asked.SetResult(Task.Run(() => site.Caller.GetAsync("health/ready")).GetAwaiter().GetResult()));
        lifetime.StopApplication();
        await Problem.IsAsync(HttpStatusCode.ServiceUnavailable, "shutting down", await asked.Task);
    }

    [Fact]
    public async Task Probe_ReadyServer_EndsWithNoughtAndOtherwiseSaysWhy()
    {
        await using var site = new Site();
        await site.InitializeAsync();
        var port = $"{site.Server.Address.Port}";
        Assert.Equal((ServerExit.Done, "ready"), await ProbeAsync(port));
        await using (var other = new SqliteConnection($"Data Source={site.Server.Store.Folder.Database};Pooling=false"))
        {
            await other.OpenAsync();
            await using var held = other.BeginTransaction();
            // Good news is kept for a second.
            while (await ProbeAsync(port) is (ServerExit.Done, _))
                await Task.Delay(100);
            Assert.Equal((ServerExit.NotReady, "Another program holds the book."), await ProbeAsync(port));
        }

        using var free = new TcpListener(IPAddress.Loopback, 0);
        free.Start();
        var nobody = ((IPEndPoint)free.LocalEndpoint).Port;
        free.Stop();
        var (code, words) = await ProbeAsync($"{nobody}");
        Assert.Equal(ServerExit.NotReady, code);
        Assert.Contains("Nothing answers", words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true, 200, """{"status":"ready"}""", "ready")]
    [InlineData(false, 502, "<html>bad gateway</html>", "The answer was 502")]
    public async Task Probe_OtherServers_AreUnderstood(bool secure, int status, string body, string words)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        using var made = new CertificateRequest("CN=club.example", key, HashAlgorithmName.SHA256).CreateSelfSigned(DateTimeOffset.UtcNow.AddDays(-1), DateTimeOffset.UtcNow.AddDays(1));
        using var certificate = X509CertificateLoader.LoadPkcs12(made.Export(X509ContentType.Pfx), null);
        builder.WebHost.UseKestrelHttpsConfiguration();
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, 0, at =>
        {
            at.Protocols = HttpProtocols.Http1;
            if (secure)
                at.UseHttps(certificate);
        }));
        await using var app = builder.Build();
        app.MapGet("/health/ready", () => Results.Text(body, statusCode: status));
        await app.StartAsync();
        var (_, said) = await ProbeAsync($"{new Uri(app.Urls.First()).Port}");
        Assert.Contains(words, said, StringComparison.Ordinal);
    }

    private static async Task<(int Code, string Said)> ProbeAsync(string port)
    {
        using var output = new StringWriter();
        using var errors = new StringWriter();
        var code = await ServerRun.RunAsync(["--health", "--port", port], null, output, errors);
        return (code, (output.ToString() + errors).Trim());
    }
}
