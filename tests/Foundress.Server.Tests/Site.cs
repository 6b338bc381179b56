using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Foundress.Book.Journal;
using Foundress.PostgresForTests;
using Foundress.Storage;

namespace Foundress.Server.Tests;

/// <summary>A real server on a free port with an empty book of its own, and a caller.</summary>
public class Site : IAsyncLifetime
{
    private readonly BookStoreOptions _options;
    private readonly bool _onPostgres;
    private string _data = "";

    public Site()
        : this(onPostgres: false)
    {
    }

    internal Site(bool onPostgres, BookStoreOptions? options = null)
    {
        _onPostgres = onPostgres;
        _options = (options ?? new BookStoreOptions()) with { BackupAtStart = false, Patience = TimeSpan.FromSeconds(1) };
    }

    internal FoundressServer Server { get; private set; } = null!;

    internal HttpClient Caller { get; private set; } = null!;

    /// <summary>The PostgreSQL database of the book; none where it lies in a file.</summary>
    internal PostgresAddress? Database { get; private set; }

    public async ValueTask InitializeAsync()
    {
        if (_onPostgres && PostgresPrograms.Missing is not null)
            return;
        _data = Directory.CreateTempSubdirectory("foundress-test-").FullName;
        if (_onPostgres)
            Database = await (await PostgresCluster.Shared).BookAsync();
        Server = await FoundressServer.StartAsync(new ServerOptions(0, _data, Demo: false, Database), storage: _options);
        // The server listens on IPv4 alone when the port is chosen for it.
        Caller = new HttpClient { BaseAddress = new UriBuilder(Server.Address) { Host = "127.0.0.1" }.Uri };
    }

    public async ValueTask DisposeAsync()
    {
        if (Server is not null)
        {
            Caller.Dispose();
            await Server.DisposeAsync();
        }

        if (Database is not null)
            await (await PostgresCluster.Shared).DropAsync(Database);
        if (_data.Length > 0)
            Directory.Delete(_data, recursive: true);
        GC.SuppressFinalize(this);
    }

    /// <summary>The site, for a test that cannot do without; skips the test where there is no PostgreSQL for it.</summary>
    internal Site Required()
    {
        Assert.SkipWhen(_onPostgres && PostgresPrograms.Missing is not null, PostgresPrograms.Missing ?? "");
        return this;
    }

    /// <summary>Runs statements on the PostgreSQL database with every right.</summary>
    internal async Task ExecuteAsync(string sql) => await (await PostgresCluster.Shared).ExecuteAsync(Database!.Database, sql);

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

/// <summary>The same with the book in PostgreSQL.</summary>
public sealed class PostgresSite() : Site(onPostgres: true);
