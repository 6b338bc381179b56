using System.Net;
using System.Net.Http.Json;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text.Json;
using Foundress.Accounts;
using Foundress.Server.Security;
using Foundress.Storage;

namespace Foundress.Server.Tests.Accounts;

/// <summary>Being reached from other computers: over HTTPS by the server itself, or through a proxy that was named.</summary>
public sealed class ReachTests : IDisposable
{
    private const string Name = "bees.example";

    private readonly string _folder = Directory.CreateTempSubdirectory("foundress-test-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Certificate_Given_IsServedAndCookiesNeedIt(bool pfx)
    {
        var (certificate, key) = MakeCertificate(pfx);
        await using var server = await StartAsync(new Reach { Accounts = true, Listen = IPAddress.Any, Certificate = certificate, Key = key, Name = Name });
        Assert.Equal(("https", Name), (server.Address.Scheme, server.Address.Host));
        using var caller = Caller(server, "https");
        var answer = await JoinAsync(server, caller);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("max-age=31536000", Assert.Single(answer.Headers.GetValues("Strict-Transport-Security")));
        Assert.All(answer.Headers.GetValues("Set-Cookie"), cookie =>
        {
            Assert.StartsWith("__Host-foundress", cookie, StringComparison.Ordinal);
            Assert.Contains("secure", cookie, StringComparison.OrdinalIgnoreCase);
        });
        using var other = new HttpRequestMessage(HttpMethod.Get, "api/v1/about");
        other.Headers.Host = "other.example";
        await Problem.IsAsync(HttpStatusCode.MisdirectedRequest, $"https://{Name}:", await caller.SendAsync(other));
    }

    [Fact]
    public async Task Certificate_WithoutItsKey_IsRefusedInWords()
    {
        var (certificate, _) = MakeCertificate(pfx: false);
        var reach = new Reach { Accounts = true, Listen = IPAddress.Any, Certificate = certificate, Name = Name };
        var error = await Assert.ThrowsAsync<CertificateException>(() => StartAsync(reach));
        Assert.Contains(certificate, error.Message, StringComparison.Ordinal);
        // And lets go of the book and of the accounts.
        File.Delete(Path.Combine(_folder, "data", AccountsDatabase.FileName));
        (await BookStore.OpenAsync(Path.Combine(_folder, "data"))).Dispose();
    }

    [Fact]
    public async Task Proxy_Named_IsBelieved()
    {
        await using var server = await StartAsync(new Reach { Accounts = true, Proxy = IPAddress.Loopback, Name = Name });
        using var caller = Caller(server, "http");
        caller.DefaultRequestHeaders.Add("X-Forwarded-For", "203.0.113.77");
        await Problem.IsAsync(HttpStatusCode.MisdirectedRequest, "X-Forwarded-Proto", await caller.GetAsync("api/v1/about"));
        caller.DefaultRequestHeaders.Add("X-Forwarded-Proto", "https");
        var answer = await JoinAsync(server, caller);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.All(answer.Headers.GetValues("Set-Cookie"), cookie => Assert.StartsWith("__Host-foundress", cookie, StringComparison.Ordinal));
        Assert.Equal("203.0.113.0/24", Assert.Single(await new SignInLog(server.Accounts!).AllAsync()).Network);
    }

    [Theory]
    [InlineData("X-Forwarded-For", "203.0.113.77")]
    [InlineData("X-Forwarded-Proto", "https")]
    [InlineData("Forwarded", "for=203.0.113.77")]
    public async Task Proxy_NotNamed_OpensNothing(string header, string value)
    {
        await using var alone = await StartAsync(Reach.ThisComputer, "alone");
        await using var club = await StartAsync(new Reach { Accounts = true, Proxy = IPAddress.Parse("192.0.2.1"), Name = Name }, "club");
        foreach (var server in new[] { alone, club })
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, "api/v1/about");
            request.Headers.Add(header, value);
            using var caller = Caller(server, "http");
            request.Headers.Host = "localhost";
            await Problem.IsAsync(HttpStatusCode.MisdirectedRequest, "--proxy ADDRESS", await caller.SendAsync(request));
        }
    }

    [Fact]
    public async Task Accounts_OnceMade_AreAlwaysUsed()
    {
        await (await StartAsync(new Reach { Accounts = true })).DisposeAsync();
        await using var server = await StartAsync(Reach.ThisComputer);
        using var caller = Caller(server, "http", host: "localhost");
        Assert.Equal(HttpStatusCode.Unauthorized, (await caller.GetAsync("api/v1/operations/home/entries")).StatusCode);
        var about = await caller.GetFromJsonAsync<JsonElement>("api/v1/about");
        Assert.True(about.GetProperty("accounts").GetBoolean());
        Assert.Equal(0, about.GetProperty("operations").GetArrayLength());
    }

    private async Task<FoundressServer> StartAsync(Reach reach, string folder = "data") => await FoundressServer.StartAsync(
        new ServerOptions(0, Path.Combine(_folder, folder), Demo: false) { Reach = reach }, storage: new BookStoreOptions { BackupAtStart = false });

    private static HttpClient Caller(FoundressServer server, string scheme, string host = Name)
    {
        var caller = new HttpClient(new HttpClientHandler { UseCookies = false, ServerCertificateCustomValidationCallback = (_, shown, _, _) => shown!.Subject == "CN=" + Name })
        {
            BaseAddress = new Uri($"{scheme}://127.0.0.1:{server.Address.Port}/"),
        };
        caller.DefaultRequestHeaders.Host = host;
        return caller;
    }

    private static async Task<HttpResponseMessage> JoinAsync(FoundressServer server, HttpClient caller)
    {
        var link = await new OneTimeLinks(server.Accounts!).MakeAsync(new LinkOffer("home", Role.Keeper, "", LinkOffer.Usual), null);
        using var request = new HttpRequestMessage(HttpMethod.Post, "api/v1/account/join")
        {
            Content = JsonContent.Create(new { secret = link.Secret, name = "Keeper", password = ClubSite.Password, device = new { name = "phone" } }),
        };
        request.Headers.Add("Origin", "https://" + Name);
        return await caller.SendAsync(request);
    }

    private (string File, string? Key) MakeCertificate(bool pfx)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        using var certificate = new CertificateRequest("CN=" + Name, key, HashAlgorithmName.SHA256).CreateSelfSigned(DateTimeOffset.UtcNow.AddDays(-1), DateTimeOffset.UtcNow.AddDays(1));
        var file = Path.Combine(_folder, pfx ? "server.pfx" : "server.pem");
        if (pfx)
        {
            File.WriteAllBytes(file, certificate.Export(X509ContentType.Pkcs12));
            return (file, null);
        }

        File.WriteAllText(file, certificate.ExportCertificatePem());
        File.WriteAllText(file + ".key", key.ExportPkcs8PrivateKeyPem());
        return (file, file + ".key");
    }
}
