using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using Foundress.Book.Exchanging;
using Foundress.Book.Journal;

namespace Foundress.Web.Sync;

/// <summary>The server over HTTP.</summary>
/// <param name="http">A client whose base address is the server.</param>
/// <param name="packing">How what is sent is made smaller.</param>
public sealed class BookServer(HttpClient http, IPacking packing) : IBookServer
{
    // Less than that travels in one packet anyhow.
    private const int WorthPacking = 1_200;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    // After a start the server reads the whole of a large operation before it can say what its apiaries are.
    private static readonly TimeSpan LongPatience = TimeSpan.FromMinutes(3);

    /// <inheritdoc/>
    public async Task<AboutReply> AboutAsync()
    {
        using var reply = await SendAsync(HttpMethod.Get, "api/v1/about", null);
        var root = reply!.RootElement;
        return new AboutReply(
            root.TryGetProperty("version", out var version) ? version.ToString() : "?",
            Incarnation(root),
            root.TryGetProperty("demo", out var demo) && demo.ValueKind == JsonValueKind.True,
            root.TryGetProperty("now", out var now) && now.ValueKind == JsonValueKind.String && now.TryGetDateTimeOffset(out var time) ? time : null,
            root.TryGetProperty("accounts", out var accounts) && accounts.ValueKind == JsonValueKind.True,
            root.TryGetProperty("signedInAs", out var who) && who.ValueKind == JsonValueKind.String ? who.GetString() : null,
            root.TryGetProperty("operations", out var operations) && operations.ValueKind == JsonValueKind.Array ? Counts(operations) : null,
            root.TryGetProperty("readsOnly", out var reads) && reads.ValueKind == JsonValueKind.Array ? [.. reads.EnumerateArray().Select(one => one.ToString())] : null);
    }

    /// <inheritdoc/>
    public async Task<PushReply> PushAsync(string operation, IReadOnlyList<Entry> entries)
    {
        using var content = await ContentAsync(EntryJson.WriteMany(entries));
        using var reply = await SendAsync(HttpMethod.Post, $"{Of(operation)}/entries", content);
        var refused = new Dictionary<EntryId, string>();
        if (reply!.RootElement.TryGetProperty("refused", out var list) && list.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in list.EnumerateArray())
            {
                if (item.TryGetProperty("id", out var id) && id.ValueKind == JsonValueKind.String && id.TryGetGuid(out var guid))
                    refused[new EntryId(guid)] = item.TryGetProperty("reason", out var reason) ? reason.ToString() : SyncTexts.NoReason;
            }
        }

        return new PushReply(refused, Incarnation(reply.RootElement));
    }

    /// <inheritdoc/>
    public async Task<PulledEntries> PullAsync(string operation, long after) =>
        Pulled((await SendAsync(HttpMethod.Get, $"{Of(operation)}/entries?after={after}&limit={ExchangeRound.Batch}", null))!);

    /// <inheritdoc/>
    public async Task<PulledEntries?> PullPartAsync(string operation, ApiaryId apiary, long after) =>
        await SendAsync(HttpMethod.Get, $"{Of(operation)}/apiaries/{apiary}/entries?after={after}&limit={ExchangeRound.Batch}", null, mayLack: true, LongPatience) is { } reply
            ? Pulled(reply)
            : null;

    /// <summary>An operation's apiaries, each with its name and how many colonies live there.</summary>
    /// <exception cref="ExchangeException">It cannot be reached or does not answer as it should.</exception>
    public async Task<IReadOnlyList<(ApiaryId Id, string Name, int Living)>> ApiariesAsync(string operation)
    {
        using var reply = await SendAsync(HttpMethod.Get, $"{Of(operation)}/apiaries", null, patience: LongPatience);
        return Read(reply!, root => root.GetProperty("apiaries").EnumerateArray()
            .Select(one => (new ApiaryId(one.GetProperty("id").GetGuid()), one.GetProperty("name").ToString(), one.GetProperty("living").GetInt32())).ToList());
    }

    /// <summary>Asks the server to remove the invented book.</summary>
    /// <exception cref="ExchangeException">It cannot be reached or refuses.</exception>
    public async Task RemoveDemoAsync()
    {
        using var reply = await SendAsync(HttpMethod.Delete, "api/v1/operations/demo", null);
    }

    private static string Of(string operation) => "api/v1/operations/" + Uri.EscapeDataString(operation);

    private static Dictionary<string, long> Counts(JsonElement operations)
    {
        var counts = new Dictionary<string, long>();
        foreach (var one in operations.EnumerateArray())
        {
            if (one.TryGetProperty("id", out var id) && one.TryGetProperty("entries", out var entries) && entries.TryGetInt64(out var count))
                counts[id.ToString()] = count;
        }

        return counts;
    }

    private static PulledEntries Pulled(JsonDocument reply)
    {
        using (reply)
        {
            return Read(reply, root => new PulledEntries(
                [.. root.GetProperty("entries").EnumerateArray().Select(EntryJson.Read)], root.GetProperty("next").GetInt64(), root.GetProperty("more").GetBoolean(),
                Incarnation(root), root.TryGetProperty("members", out var members) ? members.ToString() : null));
        }
    }

    private static T Read<T>(JsonDocument reply, Func<JsonElement, T> read)
    {
        try
        {
            return read(reply.RootElement);
        }
        catch (Exception error) when (error is EntryFormatException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            throw new ExchangeException(SyncTexts.FormatEntriesUnreadable(error.Message), error);
        }
    }

    private async Task<ByteArrayContent> ContentAsync(byte[] json)
    {
        var packed = json.Length >= WorthPacking ? await packing.GzipAsync(json) : null;
        var content = new ByteArrayContent(packed ?? json);
        content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        if (packed is not null)
            content.Headers.ContentEncoding.Add("gzip");
        return content;
    }

    private static string? Incarnation(JsonElement root) =>
        root.TryGetProperty("incarnation", out var incarnation) && incarnation.ValueKind == JsonValueKind.String ? incarnation.GetString() : null;

    private async Task<JsonDocument?> SendAsync(HttpMethod method, string address, HttpContent? content, bool mayLack = false, TimeSpan? patience = null)
    {
        using var waiting = new CancellationTokenSource(patience ?? Patience);
        using var request = new HttpRequestMessage(method, address) { Content = content };
        try
        {
            using var response = await http.SendAsync(request, waiting.Token);
            if (mayLack && response.StatusCode == HttpStatusCode.NotFound)
                return null;
            if (method == HttpMethod.Delete && response.StatusCode is HttpStatusCode.NotFound or HttpStatusCode.NoContent)
                return null;
            if (response.StatusCode is HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden)
                throw new ExchangeException(await DetailAsync(response, waiting.Token)) 
                {
                    NeedsSignIn = response.StatusCode == HttpStatusCode.Unauthorized,
                    IsForbidden = response.StatusCode == HttpStatusCode.Forbidden,
                };
            if (!response.IsSuccessStatusCode)
                throw new ExchangeException(SyncTexts.FormatAnswered((int)response.StatusCode, response.ReasonPhrase));
            if (method == HttpMethod.Delete)
                return null;
            if (response.Content.Headers.ContentType?.MediaType != "application/json")
                throw new ExchangeException(SyncTexts.NoBookHere);
            return JsonDocument.Parse(await response.Content.ReadAsByteArrayAsync(waiting.Token));
        }
        catch (HttpRequestException error)
        {
            throw new ExchangeException(SyncTexts.NoConnection, error);
        }
        catch (OperationCanceledException error)
        {
            throw new ExchangeException(SyncTexts.FormatNoAnswer((patience ?? Patience).TotalSeconds.ToString("0", CultureInfo.CurrentCulture)), error);
        }
        catch (JsonException error)
        {
            throw new ExchangeException(SyncTexts.AnswerCutOff, error);
        }
    }

    // The server's own words: who is not let in must learn what to do, and that nothing is lost.
    private static async Task<string> DetailAsync(HttpResponseMessage response, CancellationToken cancellation)
    {
        if (response.StatusCode == HttpStatusCode.Unauthorized)
            return SyncTexts.SignInAgain;
        using var problem = JsonDocument.Parse(await response.Content.ReadAsByteArrayAsync(cancellation));
        return problem.RootElement.ValueKind == JsonValueKind.Object && problem.RootElement.TryGetProperty("detail", out var detail)
            ? SyncTexts.FormatNotLetInBecause(detail)
            : SyncTexts.NotLetIn;
    }
}
