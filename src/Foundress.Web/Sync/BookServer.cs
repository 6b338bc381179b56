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
            root.TryGetProperty("signedInAs", out var who) && who.ValueKind == JsonValueKind.String ? who.GetString() : null);
    }

    /// <inheritdoc/>
    public async Task<PushReply> PushAsync(string operation, IReadOnlyList<Entry> entries)
    {
        using var content = await ContentAsync(EntryJson.WriteMany(entries));
        using var reply = await SendAsync(HttpMethod.Post, $"api/v1/operations/{Uri.EscapeDataString(operation)}/entries", content);
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
    public async Task<PulledEntries> PullAsync(string operation, long after)
    {
        using var reply = await SendAsync(
            HttpMethod.Get, $"api/v1/operations/{Uri.EscapeDataString(operation)}/entries?after={after}&limit={ExchangeRound.Batch}", null);
        try
        {
            var root = reply!.RootElement;
            var entries = root.GetProperty("entries").EnumerateArray().Select(EntryJson.Read).ToList();
            return new PulledEntries(entries, root.GetProperty("next").GetInt64(), root.GetProperty("more").GetBoolean(), Incarnation(root));
        }
        catch (Exception error) when (error is EntryFormatException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            throw new ExchangeException(SyncTexts.FormatEntriesUnreadable(error.Message), error);
        }
    }

    /// <summary>Asks the server to remove the invented book.</summary>
    /// <exception cref="ExchangeException">It cannot be reached or refuses.</exception>
    public async Task RemoveDemoAsync()
    {
        using var reply = await SendAsync(HttpMethod.Delete, "api/v1/operations/demo", null);
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

    private async Task<JsonDocument?> SendAsync(HttpMethod method, string address, HttpContent? content)
    {
        using var patience = new CancellationTokenSource(Patience);
        using var request = new HttpRequestMessage(method, address) { Content = content };
        try
        {
            using var response = await http.SendAsync(request, patience.Token);
            if (method == HttpMethod.Delete && response.StatusCode is HttpStatusCode.NotFound or HttpStatusCode.NoContent)
                return null;
            if (response.StatusCode is HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden)
                throw new ExchangeException(await DetailAsync(response, patience.Token)) { NeedsSignIn = response.StatusCode == HttpStatusCode.Unauthorized };
            if (!response.IsSuccessStatusCode)
                throw new ExchangeException(SyncTexts.FormatAnswered((int)response.StatusCode, response.ReasonPhrase));
            if (method == HttpMethod.Delete)
                return null;
            if (response.Content.Headers.ContentType?.MediaType != "application/json")
                throw new ExchangeException(SyncTexts.NoBookHere);
            return JsonDocument.Parse(await response.Content.ReadAsByteArrayAsync(patience.Token));
        }
        catch (HttpRequestException error)
        {
            throw new ExchangeException(SyncTexts.NoConnection, error);
        }
        catch (OperationCanceledException error)
        {
            throw new ExchangeException(SyncTexts.FormatNoAnswer(Patience.TotalSeconds.ToString("0", CultureInfo.CurrentCulture)), error);
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
