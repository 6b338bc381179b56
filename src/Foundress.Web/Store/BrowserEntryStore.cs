using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using System.Text;
using System.Text.Json;
using Foundress.Book.Journal;

namespace Foundress.Web.Store;

/// <summary>The journal in the browser's IndexedDB.</summary>
[SupportedOSPlatform("browser")]
public sealed class BrowserEntryStore : IEntryStore
{
    /// <inheritdoc/>
    public Task AppendAsync(string operation, IEnumerable<Entry> entries, bool pending, string? draft = null) =>
        Guard(() => StoreModule.Append(operation, Pairs(entries.Select(entry => (entry.Id, (string?)EntryJson.Write(entry)))), pending, draft));

    /// <inheritdoc/>
    public async Task<StoredEntries> ReadAfterAsync(string operation, int position)
    {
        using var document = JsonDocument.Parse(await Guard(() => StoreModule.ReadAfter(operation, position)));
        var rows = document.RootElement.GetProperty("entries");
        var entries = Readable(rows);
        return new StoredEntries(document.RootElement.GetProperty("last").GetInt32(), entries, rows.GetArrayLength() - entries.Count);
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<Entry>> ReadPendingAsync(string operation, int limit)
    {
        using var document = JsonDocument.Parse(await Guard(() => StoreModule.ReadPending(operation, limit)));
        return Readable(document.RootElement);
    }

    /// <inheritdoc/>
    public Task<int> CountPendingAsync(string operation) => Guard(() => StoreModule.CountPending(operation));

    /// <inheritdoc/>
    public Task<int> CountRefusedAsync(string operation) => Guard(() => StoreModule.CountRefused(operation));

    /// <inheritdoc/>
    public Task SettleAsync(string operation, IEnumerable<(EntryId Id, string? Refused)> outcomes) =>
        Guard(() => StoreModule.Settle(operation, Pairs(outcomes)));

    /// <inheritdoc/>
    public Task UnsettleAsync(string operation) => Guard(() => StoreModule.Unsettle(operation));

    /// <inheritdoc/>
    public Task RetryRefusedAsync(string operation) => Guard(() => StoreModule.RetryRefused(operation));

    /// <inheritdoc/>
    public async Task ForgetAsync(string operation)
    {
        await Guard(() => StoreModule.Forget(operation));
        await CourseStore.ForgetAsync(operation);
    }

    /// <inheritdoc/>
    public Task DropCopiedAsync(string operation) => Guard(() => StoreModule.DropCopied(operation));

    /// <inheritdoc/>
    public Task<string?> GetAsync(string key) => Guard(() => StoreModule.MetaGet(key));

    /// <inheritdoc/>
    public Task SetAsync(string key, string? value) => Guard(() => StoreModule.MetaSet(key, value));

    /// <inheritdoc/>
    public Task<string> FirstAsync(string key, string value) => Guard(() => StoreModule.MetaFirst(key, value));

    /// <inheritdoc/>
    public Task<string?> GetDraftAsync(string key) => Guard(() => StoreModule.DraftGet(key));

    /// <inheritdoc/>
    public Task SetDraftAsync(string key, string? value) => Guard(() => StoreModule.DraftSet(key, value));

    /// <inheritdoc/>
    public void Tell(string operation) => StoreModule.Tell(operation);

    /// <inheritdoc/>
    public void Listen(Action<string> changed) => StoreModule.Listen(changed);

    // A row that is no entry is left where it is: it may hold what a newer version can read.
    private static List<Entry> Readable(JsonElement rows)
    {
        var entries = new List<Entry>(rows.GetArrayLength());
        foreach (var row in rows.EnumerateArray())
        {
            try
            {
                entries.Add(EntryJson.Read(row));
            }
            catch (EntryFormatException)
            {
                continue;
            }
        }

        return entries;
    }

    private static string Pairs(IEnumerable<(EntryId Id, string? Text)> pairs)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream))
        {
            writer.WriteStartArray();
            foreach (var (id, text) in pairs)
            {
                writer.WriteStartArray();
                writer.WriteStringValue(id.Value);
                writer.WriteStringValue(text);
                writer.WriteEndArray();
            }

            writer.WriteEndArray();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static async Task Guard(Func<Task> call)
    {
        try
        {
            await call();
        }
        catch (JSException error)
        {
            throw Explained(error);
        }
    }

    private static async Task<T> Guard<T>(Func<Task<T>> call)
    {
        try
        {
            return await call();
        }
        catch (JSException error)
        {
            throw Explained(error);
        }
    }

    private static StoreException Explained(JSException error) => new(
        error.Message.Contains("Quota", StringComparison.OrdinalIgnoreCase)
            ? StoreTexts.FormatNoRoom(error.Message)
            : StoreTexts.FormatNoAnswer(error.Message),
        error);
}
