using System.Net;

namespace Foundress.Server.Tests;

public class WebAppTests(Site site) : IClassFixture<Site>
{
    [Theory]
    [InlineData("")]
    [InlineData("index.html")]
    [InlineData("colony/0197")]
    public async Task Get_Page_GivesTheApp(string path)
    {
        var answer = await site.Caller.GetAsync(path);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("text/html", answer.Content.Headers.ContentType?.MediaType);
        Assert.Contains("<title>Foundress</title>", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Get_Loader_IsServed() =>
        Assert.Equal(HttpStatusCode.OK, (await site.Caller.GetAsync("_framework/blazor.webassembly.js")).StatusCode);

    [Theory]
    [InlineData("GET", "api/v1/nothing")]
    [InlineData("GET", "api/nothing")]
    [InlineData("GET", "api/v2/about")]
    [InlineData("PUT", "api/v1/about")]
    public async Task Request_UnknownApiAddress_IsNotTheApp(string method, string path)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        await Problem.IsAsync(HttpStatusCode.NotFound, "nothing at this address", await site.Caller.SendAsync(request));
    }

    [Fact]
    public async Task Get_MissingFile_IsNotTheApp() =>
        Assert.Equal(HttpStatusCode.NotFound, (await site.Caller.GetAsync("missing.js")).StatusCode);
}
