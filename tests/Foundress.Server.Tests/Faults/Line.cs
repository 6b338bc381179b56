using Foundress.Book.Exchanging;
using Foundress.Book.Journal;
using Foundress.Web.Sync;

namespace Foundress.Server.Tests.Faults;

/// <summary>The phone's own line to the server, which may come back at another address; remembers what the server acknowledged.</summary>
internal sealed class Line : IBookServer, IDisposable
{
    private readonly Lock _gate = new();
    private readonly HashSet<EntryId> _acknowledged = [];
    private HttpClient _http = null!;

    public void LeadTo(Uri address)
    {
        _http?.Dispose();
        _http = new HttpClient(new SocketsHttpHandler { AutomaticDecompression = System.Net.DecompressionMethods.All }) { BaseAddress = address };
    }

    public HashSet<EntryId> Acknowledged
    {
        get
        {
            lock (_gate)
                return [.. _acknowledged];
        }
    }

    public Task<AboutReply> AboutAsync() => Server.AboutAsync();

    public async Task<PushReply> PushAsync(string operation, IReadOnlyList<Entry> entries)
    {
        var reply = await Server.PushAsync(operation, entries);
        lock (_gate)
            _acknowledged.UnionWith(entries.Select(entry => entry.Id).Where(id => !reply.Refused.ContainsKey(id)));
        return reply;
    }

    public Task<PulledEntries> PullAsync(string operation, long after) => Server.PullAsync(operation, after);

    public Task<PulledEntries?> PullPartAsync(string operation, ApiaryId apiary, long after) => Server.PullPartAsync(operation, apiary, after);

    public async Task<List<Entry>> AllAsync(string operation)
    {
        var all = new List<Entry>();
        PulledEntries page;
        var after = 0L;
        do
        {
            page = await Server.PullAsync(operation, after);
            all.AddRange(page.Entries);
            after = page.Next;
        }
        while (page.More);
        return all;
    }

    public void Dispose() => _http.Dispose();

    private BookServer Server => new(_http, new Packing());
}
