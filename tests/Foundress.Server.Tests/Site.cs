using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Foundress.Book.Journal;
using Foundress.Storage;

namespace Foundress.Server.Tests;

/// <summary>A real server on a free port with an empty book of its own, and a caller.</summary>
public sealed class Site : IAsyncLifetime
{
    private readonly BookStoreOptions _options;
    private readonly string _data = Directory.CreateTempSubdirectory("foundress-test-").FullName;

    public Site()
        : this(new BookStoreOptions())
    {
    }

    internal Site(BookStoreOptions options) => _options = options with { BackupAtStart = false, Patience = TimeSpan.FromSeconds(1) };

    internal FoundressServer Server { get; private set; } = null!;

    internal HttpClient Caller { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        Server = await FoundressServer.StartAsync(
            new ServerOptions(0, _data, Demo: false), storage: _options);
        // The server listens on IPv4 alone when the port is chosen for it.
        Caller = new HttpClient { BaseAddress = new UriBuilder(Server.Address) { Host = "127.0.0.1" }.Uri };
    }

    public async ValueTask DisposeAsync()
    {
        Caller.Dispose();
        await Server.DisposeAsync();
        Directory.Delete(_data, recursive: true);
    }

    internal static Entry Entry(int number, string operation = "home", long clock = 0, string? payload = null) => new(
        new EntryId(new Guid(number, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, 1)), operation, "keeper", "phone",
        new HybridTime(1_750_000_000_000 + clock + number, 0), "jar", 1, payload ?? $$"""{"n": {{number}}}""");

    internal static HttpContent Json(string text) => new StringContent(text, Encoding.UTF8, "application/json");

    internal static HttpContent Json(params Entry[] entries)
    {
        var content = new ByteArrayContent(EntryJson.WriteMany(entries));
        content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        return content;
    }

    internal static string Entries(string operation) => $"api/v1/operations/{Uri.EscapeDataString(operation)}/entries";

    internal async Task<JsonElement> SendAsync(string operation, params Entry[] entries)
    {
        var answer = await Caller.PostAsync(Entries(operation), Json(entries));
        answer.EnsureSuccessStatusCode();
        return await answer.Content.ReadFromJsonAsync<JsonElement>();
    }

    internal async Task<List<Entry>> TakeAllAsync(string operation, int limit = 500)
    {
        var all = new List<Entry>();
        JsonElement page;
        var cursor = 0L;
        do
        {
            page = await Caller.GetFromJsonAsync<JsonElement>($"{Entries(operation)}?after={cursor}&limit={limit}");
            all.AddRange(page.GetProperty("entries").EnumerateArray().Select(EntryJson.Read));
            cursor = page.GetProperty("next").GetInt64();
        }
        while (page.GetProperty("more").GetBoolean());
        return all;
    }
}
