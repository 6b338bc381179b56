using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using Foundress.Book.Journal;

namespace Foundress.Web.Sync;

/// <summary>The server's side of the exchange: send what you lack, take what I lack.</summary>
/// <param name="http">A client whose base address is the server.</param>
public sealed class BookServer(HttpClient http)
{
    /// <summary>Entries sent or asked for at a time.</summary>
    public const int Batch = 500;

    // The server takes bodies of 8 MB; a batch of unusually long records is made shorter.
    private const int GreatestBatchText = 2_000_000;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    /// <summary>What the server says of itself.</summary>
    /// <exception cref="ExchangeException">It cannot be reached or does not answer as it should.</exception>
    public async Task<AboutReply> AboutAsync()
    {
        using var reply = await SendAsync(HttpMethod.Get, "api/v1/about", null);
        var root = reply!.RootElement;
        return new AboutReply(
            root.TryGetProperty("version", out var version) ? version.ToString() : "?",
            root.TryGetProperty("incarnation", out var incarnation) && incarnation.ValueKind == JsonValueKind.String ? incarnation.GetString() : null,
            root.TryGetProperty("demo", out var demo) && demo.ValueKind == JsonValueKind.True,
            root.TryGetProperty("accounts", out var accounts) && accounts.ValueKind == JsonValueKind.True,
            root.TryGetProperty("signedInAs", out var who) && who.ValueKind == JsonValueKind.String ? who.GetString() : null);
    }

    /// <summary>Gives entries to the server. It may be repeated: the server knows them by id.</summary>
    /// <returns>The entries it would not take, each with its reason.</returns>
    /// <exception cref="ExchangeException">It cannot be reached or does not answer as it should.</exception>
    public async Task<IReadOnlyDictionary<EntryId, string>> PushAsync(string operation, IReadOnlyList<Entry> entries)
    {
        using var content = new ByteArrayContent(EntryJson.WriteMany(entries));
        content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        using var reply = await SendAsync(HttpMethod.Post, $"api/v1/operations/{Uri.EscapeDataString(operation)}/entries", content);
        var refused = new Dictionary<EntryId, string>();
        if (reply!.RootElement.TryGetProperty("refused", out var list) && list.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in list.EnumerateArray())
            {
                if (item.TryGetProperty("id", out var id) && id.ValueKind == JsonValueKind.String && id.TryGetGuid(out var guid))
                    refused[new EntryId(guid)] = item.TryGetProperty("reason", out var reason) ? reason.ToString() : "no reason given";
            }
        }

        return refused;
    }

    /// <summary>As many of the entries, from the first on, as go into one request; never none.</summary>
    public static IReadOnlyList<Entry> OneRequest(IReadOnlyList<Entry> entries)
    {
        var (count, text) = (0, 0);
        while (count < Math.Min(entries.Count, Batch) && (count == 0 || text + entries[count].Payload.Length <= GreatestBatchText))
            text += entries[count++].Payload.Length;
        return count == entries.Count ? entries : [.. entries.Take(count)];
    }

    /// <summary>Takes entries from the server after a position in its own order.</summary>
    /// <exception cref="ExchangeException">It cannot be reached or does not answer as it should.</exception>
    public async Task<PulledEntries> PullAsync(string operation, long after)
    {
        using var reply = await SendAsync(
            HttpMethod.Get, $"api/v1/operations/{Uri.EscapeDataString(operation)}/entries?after={after}&limit={Batch}", null);
        try
        {
            var root = reply!.RootElement;
            var entries = root.GetProperty("entries").EnumerateArray().Select(EntryJson.Read).ToList();
            return new PulledEntries(entries, root.GetProperty("next").GetInt64(), root.GetProperty("more").GetBoolean());
        }
        catch (Exception error) when (error is EntryFormatException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            throw new ExchangeException($"The server's entries could not be read: {error.Message}", error);
        }
    }

    /// <summary>Asks the server to remove the invented book.</summary>
    /// <exception cref="ExchangeException">It cannot be reached or refuses.</exception>
    public async Task RemoveDemoAsync()
    {
        using var reply = await SendAsync(HttpMethod.Delete, "api/v1/operations/demo", null);
    }

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
                throw new ExchangeException($"The server answered {(int)response.StatusCode} ({response.ReasonPhrase}).");
            if (method == HttpMethod.Delete)
                return null;
            if (response.Content.Headers.ContentType?.MediaType != "application/json")
                throw new ExchangeException("This address serves the program but keeps no book, so nothing is copied.");
            return JsonDocument.Parse(await response.Content.ReadAsByteArrayAsync(patience.Token));
        }
        catch (HttpRequestException error)
        {
            throw new ExchangeException("No connection to the server.", error);
        }
        catch (OperationCanceledException error)
        {
            throw new ExchangeException($"The server did not answer within {Patience.TotalSeconds:0} seconds.", error);
        }
        catch (JsonException error)
        {
            throw new ExchangeException("The server's answer was cut off or is not valid JSON.", error);
        }
    }

    // The server's own words: who is not let in must learn what to do, and that nothing is lost.
    private static async Task<string> DetailAsync(HttpResponseMessage response, CancellationToken cancellation)
    {
        if (response.StatusCode == HttpStatusCode.Unauthorized)
            return "Sign in again; everything is kept on this device.";
        using var problem = JsonDocument.Parse(await response.Content.ReadAsByteArrayAsync(cancellation));
        return problem.RootElement.ValueKind == JsonValueKind.Object && problem.RootElement.TryGetProperty("detail", out var detail)
            ? $"{detail} Everything is kept on this device."
            : "The server does not let this device in. Everything is kept on it.";
    }
}
