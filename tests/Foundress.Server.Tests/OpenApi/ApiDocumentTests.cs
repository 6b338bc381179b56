using System.Net;
using System.Text;
using System.Text.Json;
using Foundress.Book.Exchanging;
using Foundress.Book.Journal;
using Json.Schema;
using Microsoft.OpenApi;
using Microsoft.OpenApi.Reader;

namespace Foundress.Server.Tests.OpenApi;

/// <summary>The published description of the API: valid, whole, the same as the committed copy, and true.</summary>
public sealed class ApiDocumentTests(Site site) : IClassFixture<Site>
{
    private const string Update = "FOUNDRESS_UPDATE_DOCS";

    [Fact]
    public async Task Document_ReadByAParser_HasNoFault()
    {
        var (document, diagnostic) = await ReadAsync();
        Assert.Empty(diagnostic.Errors.Select(error => error.ToString()));
        Assert.Equal("1", document.Info.Version);
        Assert.Equal(OpenApiSpecVersion.OpenApi3_1, diagnostic.SpecificationVersion);
    }

    [Fact]
    public async Task Document_EveryAddress_IsDescribedWithItsAnswers()
    {
        var (document, _) = await ReadAsync();
        var operations = document.Paths.SelectMany(path => path.Value.Operations!.Select(operation => (Name: $"{operation.Key} {path.Key}", operation.Value))).ToArray();
        Assert.True(operations.Length >= 15, $"only {operations.Length} addresses are described");
        Assert.Distinct(operations.Select(operation => operation.Value.OperationId));
        Assert.All(operations, operation =>
        {
            Assert.True(operation.Value.Summary is { Length: > 5 } && operation.Value.Tags is { Count: 1 }, operation.Name);
            Assert.Contains(operation.Value.Responses!, answer => answer.Key[0] == '2' && answer.Value.Content is { Count: > 0 });
            Assert.All(operation.Value.Responses!, answer => Assert.False(string.IsNullOrWhiteSpace(answer.Value.Description), operation.Name));
        });
    }

    [Fact]
    public async Task Document_CommittedCopy_IsTheOneServed()
    {
        var served = (await site.Caller.GetStringAsync("api/v1/openapi.json")).ReplaceLineEndings("\n") + "\n";
        var file = Path.Combine(Root(), "docs", "openapi.json");
        if (Environment.GetEnvironmentVariable(Update) == "1")
            await File.WriteAllTextAsync(file, served);
        Assert.True(File.Exists(file) && await File.ReadAllTextAsync(file) == served, $"{file} is not what the server says. Run this test with {Update}=1 and look at what changed: within version 1 only what old callers can pass over may be added.");
    }

    // Whatever an address answers when it is really asked is among the answers described, in a form described.
    [Theory]
    [InlineData("")]
    [InlineData("?format=odd&from=x&after=-1")]
    [InlineData("?format=json&from=2026-01-01&to=2026-12-31")]
    public async Task Answers_OfEveryReadingAddress_AreThoseDescribed(string query)
    {
        var (document, _) = await ReadAsync();
        await site.SendAsync("home", Site.Entry(1));
        var asked = 0;
        foreach (var (path, item) in document.Paths)
        {
            if (item.Operations!.GetValueOrDefault(HttpMethod.Get) is not { } operation)
                continue;
            using var answer = await site.Caller.GetAsync(path[1..].Replace("{operation}", "home", StringComparison.Ordinal).Replace("{apiary}", "00000001-0000-7000-8000-000000000001", StringComparison.Ordinal) + query);
            var status = ((int)answer.StatusCode).ToString();
            Assert.True(operation.Responses!.ContainsKey(status), $"{path}{query} answered {status}, which is not described.");
            Assert.Contains(answer.Content.Headers.ContentType!.MediaType!, operation.Responses[status].Content!.Keys);
            asked++;
        }

        Assert.True(asked >= 12, $"only {asked} addresses were asked");
    }

    [Fact]
    public async Task Schema_Served_IsTheCommittedOneAndAcceptsWhatTheServerGives()
    {
        var text = await site.Caller.GetStringAsync("api/v1/schemas/entry.json");
        Assert.Equal(await File.ReadAllTextAsync(Path.Combine(Root(), "docs", "schema", "entry.schema.json")), text);
        var entry = Site.Entry(1, "schema", payload: """{"entry":"018f2f5e-0000-7000-8000-000000000001","reason":"twice"}""") with { Kind = "strike" };
        await site.SendAsync("schema", entry);
        using var page = JsonDocument.Parse(await site.Caller.GetStringAsync(Site.Entries("schema")));
        Assert.True(JsonSchema.FromText(text).Evaluate(Assert.Single(page.RootElement.GetProperty("entries").EnumerateArray())).IsValid);
    }

    // An old server between two new phones: what it cannot read goes through it character for character, one entry at a time or in a file.
    [Fact]
    public async Task Book_EntriesOfANewerVersion_ComeBackByteForByte()
    {
        Entry[] strange =
        [
            Site.Entry(1, "newer", payload: "{ \"a\" : 1e400,\t\"a\":2, \"\\ud800\" : \"\\u0000\" }") with { Kind = "of-tomorrow", Schema = 99 },
            Site.Entry(2, "newer", payload: "{\n  \"over\": \"several\",\r\n  \"colony\": [ 1.50 ]\n}") with { Schema = 2 },
            Site.Entry(3, "newer", payload: "{\"on\":\"not a day\"}"),
        ];
        await site.SendAsync("newer", strange);
        Assert.Equal(strange, await site.TakeAllAsync("newer"));
        using var answer = await site.Caller.GetAsync("api/v1/operations/newer/book");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var file = BookFile.Read(await answer.Content.ReadAsStreamAsync());
        Assert.True(file.IsWhole);
        Assert.Equal(strange, file.Entries);
        await site.SendAsync("newer", [.. file.Entries]);
        Assert.Equal(strange, await site.TakeAllAsync("newer"));
    }

    private async Task<(OpenApiDocument Document, OpenApiDiagnostic Diagnostic)> ReadAsync()
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(await site.Caller.GetStringAsync("api/v1/openapi.json")));
        var read = await OpenApiDocument.LoadAsync(stream, "json");
        return (read.Document!, read.Diagnostic!);
    }

    private static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Foundress.slnx")))
                return folder.FullName;
        }

        throw new DirectoryNotFoundException("No folder above the test holds Foundress.slnx.");
    }
}
