using System.Collections.Concurrent;
using System.Net;
using System.Net.Http.Json;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Foundress.Book.Journal;
using Foundress.Server.Tests.Accounts;
using Foundress.Storage;

namespace Foundress.Server.Tests.Running;

/// <summary>The drill of docs/operations.md from end to end, with the programs themselves.</summary>
public class RestoreDrillTests
{
    private const int Writers = 3;
    private const int Batch = 20;

    [Fact]
    public async Task Drill_BackupUnderWritersThenRestore_HasEveryEntryAcknowledgedBefore()
    {
        using var data = new TempData();
        using var elsewhere = new TempData();
        var acknowledged = new ConcurrentDictionary<EntryId, Entry>();
        Guid first;
        BackupMade backup;
        Entry[] before;
        await using (var server = await ProgramRun.ServerAsync(data.Path))
        {
            using var caller = new HttpClient { BaseAddress = server.Address };
            first = (await TakeAsync(caller)).Incarnation;
            using var enough = new CancellationTokenSource();
            var writers = Enumerable.Range(0, Writers).Select(n => WriteAsync(caller, n, acknowledged, enough.Token)).ToArray();
            await UntilAsync(() => acknowledged.Count >= 1_000, writers);
            before = [.. acknowledged.Values];
            var answer = await caller.PostAsync("api/v1/backups", null);
            answer.EnsureSuccessStatusCode();
            backup = (await answer.Content.ReadFromJsonAsync<BackupMade>(JsonSerializerOptions.Web))!;
            // The writers never stopped for it.
            var atBackup = acknowledged.Count;
            await UntilAsync(() => acknowledged.Count >= atBackup + 200, writers);
            await enough.CancelAsync();
            await Task.WhenAll(writers);
            server.AskToEnd();
            Assert.Equal(ServerExit.Done, (await server.EndAsync()).Code);
        }

        var file = Path.Combine(data["backups"], backup.Name);
        // The disk is lost: on another one.
        var there = await RestoreAsync(file, elsewhere.Path);
        Assert.DoesNotContain("kept as", there.Said, StringComparison.Ordinal);
        // A mistake was made: in the same place, where the book as it was is kept.
        var here = await RestoreAsync(file, data.Path);
        Assert.Contains("before-restore", here.Said, StringComparison.Ordinal);
        Assert.Equal(there.Count, here.Count);

        await using (var server = await ProgramRun.ServerAsync(elsewhere.Path))
        {
            using var caller = new HttpClient { BaseAddress = server.Address };
            var restored = await TakeAsync(caller);
            Assert.NotEqual(first, restored.Incarnation);
            Assert.Equal(here.Count, restored.Entries.Count);
            Assert.InRange(restored.Entries.Count, before.Length, acknowledged.Count);
            var held = restored.Entries.ToDictionary(entry => entry.Id);
            Assert.All(before, entry => Assert.Equal(entry, held[entry.Id]));
            var (sent, back) = (Hash(held.Keys.Select(id => acknowledged[id])), Hash(restored.Entries));
            Assert.Equal(sent, back);
            TestContext.Current.TestOutputHelper!.WriteLine(
                $"{before.Length} entries acknowledged before the backup, {restored.Entries.Count} in it, {acknowledged.Count} in all; sha256 {back}");

            // Devices see that the book is another, and send what they hold.
            foreach (var part in acknowledged.Values.Chunk(500))
                (await caller.PostAsync(Site.Entries("home"), Site.Json(part))).EnsureSuccessStatusCode();
            Assert.Equal(Hash(acknowledged.Values), Hash((await TakeAsync(caller)).Entries));
            server.AskToEnd();
            Assert.Equal(ServerExit.Done, (await server.EndAsync()).Code);
        }

        using var store = await BookStore.OpenAsync(elsewhere.Path);
        Assert.Equal(acknowledged.Count, await store.CheckAsync());
    }

    [Fact]
    public async Task Drill_OfAServerWithAccounts_LetsTheSamePeopleAndPhonesInAgain()
    {
        using var data = new TempData();
        using var elsewhere = new TempData();
        var made = await ProgramRun.CommandAsync("account", "add", "Anna", "--keeper", "--administrator", "--data", data.Path);
        Assert.Equal(0, made.Code);
        string file, device;
        await using (var server = await ProgramRun.ServerAsync(data.Path))
        {
            using var anna = new Guest(server.Address);
            var joined = await anna.PostAsync("account/join", new { secret = new Uri(made.Output.Split('\n')[1]).Fragment[1..], name = "Anna", password = ClubSite.Password, device = new { name = "phone" } });
            Assert.True(joined.IsSuccessStatusCode, await joined.Content.ReadAsStringAsync());
            Assert.True((await anna.SendAsync("home", Site.Entry(1))).IsSuccessStatusCode);
            var answer = await anna.PostAsync("backups", new { });
            file = Path.Combine(data["backups"], (await answer.Content.ReadFromJsonAsync<BackupMade>(JsonSerializerOptions.Web))!.Name);
            device = anna.Secret!;
            server.AskToEnd();
            Assert.Equal(ServerExit.Done, (await server.EndAsync()).Code);
        }

        var (count, said) = await RestoreAsync(file, elsewhere.Path);
        Assert.Equal(1, count);
        Assert.Contains("Accounts restored: 1.", said, StringComparison.Ordinal);
        await using (var server = await ProgramRun.ServerAsync(elsewhere.Path))
        {
            using var stranger = new Guest(server.Address);
            Assert.Equal(HttpStatusCode.Unauthorized, (await stranger.GetAsync("operations/home/entries")).StatusCode);
            Assert.Equal(HttpStatusCode.OK, (await stranger.PostAsync("account/sign-in", new { name = "Anna", password = ClubSite.Password })).StatusCode);
            using var phone = new HttpClient { BaseAddress = server.Address };
            phone.DefaultRequestHeaders.Authorization = new("Bearer", device);
            Assert.Equal([Site.Entry(1)], (await TakeAsync(phone)).Entries);
            server.AskToEnd();
            Assert.Equal(ServerExit.Done, (await server.EndAsync()).Code);
        }
    }

    private static async Task<(int Count, string Said)> RestoreAsync(string file, string folder)
    {
        var ended = await ProgramRun.CommandAsync("restore", file, "--data", folder);
        Assert.Equal((0, ""), (ended.Code, ended.Errors));
        Assert.StartsWith("Restored ", ended.Output, StringComparison.Ordinal);
        Assert.Matches("fingerprint of backup and book  [0-9a-f]{64}\n", ended.Output);
        return (int.Parse(ended.Output.Split(' ')[1]), ended.Output);
    }

    private static async Task WriteAsync(HttpClient caller, int writer, ConcurrentDictionary<EntryId, Entry> acknowledged, CancellationToken enough)
    {
        for (var batch = 0; !enough.IsCancellationRequested; batch++)
        {
            var entries = Enumerable.Range(0, Batch)
                .Select(n => Site.Entry((writer * 1_000_000) + (batch * Batch) + n, payload: $$"""{"note":"Übersicht {{writer}}","batch":{{batch}}}""") with { Device = $"phone {writer}" }).ToArray();
            var answer = await caller.PostAsync(Site.Entries("home"), Site.Json(entries), CancellationToken.None);
            answer.EnsureSuccessStatusCode();
            foreach (var entry in entries)
                acknowledged[entry.Id] = entry;
        }
    }

    private static async Task UntilAsync(Func<bool> done, Task[] writers)
    {
        while (!done())
        {
            // One that failed says why.
            if (await Task.WhenAny(Task.Delay(10), Task.WhenAny(writers)) is Task<Task> ended)
                await await ended;
        }
    }

    private static async Task<(Guid Incarnation, List<Entry> Entries)> TakeAsync(HttpClient caller)
    {
        var all = new List<Entry>();
        JsonElement page;
        var cursor = 0L;
        do
        {
            page = await caller.GetFromJsonAsync<JsonElement>($"{Site.Entries("home")}?after={cursor}&limit=2000");
            all.AddRange(page.GetProperty("entries").EnumerateArray().Select(EntryJson.Read));
            cursor = page.GetProperty("next").GetInt64();
        }
        while (page.GetProperty("more").GetBoolean());
        return (page.GetProperty("incarnation").GetGuid(), all);
    }

    private static string Hash(IEnumerable<Entry> entries) => Convert.ToHexStringLower(SHA256.HashData(
        Encoding.UTF8.GetBytes(string.Join('\n', entries.OrderBy(entry => entry.Id.Value).Select(EntryJson.Write)))));

    private sealed record BackupMade(string Name);
}
