using Microsoft.Extensions.Time.Testing;

namespace Foundress.Storage.Tests;

/// <summary>What only files can do: take the place of the book that lies there.</summary>
public class RestoreTests
{
    private static readonly DateTimeOffset Start = new(2025, 7, 1, 9, 30, 15, TimeSpan.Zero);

    [Fact]
    public async Task Open_DayAfterDay_KeepsTheNewestOfTheLastDaysAndAllMadeBeforeARestore()
    {
        using var folder = new TempFolder();
        var time = new FakeTimeProvider(Start);
        var options = new BookStoreOptions { Time = time, DaysKept = 3 };
        using (var store = await BookStore.OpenAsync(folder.Path, options))
        {
            await store.AppendAsync("home", Some.Entries(1));
            await store.BackupAsync(folder["mine.db"]);
        }

        await BookStore.RestoreAsync(folder.Path, folder["mine.db"], options);
        for (var day = 0; day < 5; day++)
        {
            using var store = await BookStore.OpenAsync(folder.Path, options);
            time.Advance(TimeSpan.FromHours(1));
            await store.BackupAsync();
            time.Advance(TimeSpan.FromHours(30));
        }

        Assert.Contains("foundress-20250701-093015Z-before-restore.db", Names(folder));
        var daily = Names(folder).Where(name => name.Length == "foundress-20250701-093015Z.db".Length).ToArray();
        Assert.Equal(daily.Order().TakeLast(4), daily.Order());
        Assert.Equal(3, daily.Select(name => name[..18]).Distinct().Count());
    }

    [Fact]
    public async Task Restore_OlderBackup_ReplacesTheBookAndKeepsTheOneThereWas()
    {
        using var folder = new TempFolder();
        Guid before;
        using (var store = await BookStore.OpenAsync(folder.Path))
        {
            before = store.Incarnation;
            await store.AppendAsync("home", Some.Entries(3));
            await store.BackupAsync(folder["three.db"]);
            await store.AppendAsync("home", Some.Entries(2, from: 3));
        }

        var result = await BookStore.RestoreAsync(folder.Path, folder["three.db"]);
        Assert.Equal((3, false), (result.Entries, result.WasDamaged));
        using (var store = await BookStore.OpenAsync(folder.Path))
        {
            Assert.Equal(Some.Entries(3), await Some.AllAsync(store));
            Assert.NotEqual(before, store.Incarnation);
        }

        Assert.Equal(5, (await BookStore.RestoreAsync(folder.Path, result.Kept!)).Entries);
    }

    [Fact]
    public async Task Restore_WhileOpen_IsRefusedAndChangesNothing()
    {
        using var folder = new TempFolder();
        using var store = await BookStore.OpenAsync(folder.Path);
        await store.AppendAsync("home", Some.Entries(3));
        await store.BackupAsync(folder["three.db"]);
        await store.AppendAsync("home", Some.Entries(2, from: 3));
        var error = await Assert.ThrowsAsync<StorageException>(() => BookStore.RestoreAsync(folder.Path, folder["three.db"]));
        Assert.Equal(StorageFault.InUse, error.Fault);
        Assert.Equal(5, await store.CountAsync("home"));
    }

    [Fact]
    public async Task Restore_BadFile_IsRefusedAndChangesNothing()
    {
        using var folder = new TempFolder();
        using (var store = await BookStore.OpenAsync(folder.Path))
        {
            await store.AppendAsync("home", Some.Entries(2_000));
            await store.BackupAsync(folder["good.db"]);
        }

        var good = await File.ReadAllBytesAsync(folder["good.db"]);
        await File.WriteAllTextAsync(folder["text.db"], "not a database at all, only some text");
        await File.WriteAllBytesAsync(folder["cut.db"], good[..(good.Length / 3)]);
        foreach (var name in new[] { "text.db", "cut.db", "absent.db", DataFolder.DatabaseName })
        {
            var error = await Assert.ThrowsAsync<StorageException>(() => BookStore.RestoreAsync(folder.Path, folder[name]));
            Assert.Equal(StorageFault.BadBackup, error.Fault);
            Assert.Contains(folder[name], error.Message, StringComparison.Ordinal);
        }

        using var again = await BookStore.OpenAsync(folder.Path);
        Assert.Equal(2_000, await again.CheckAsync());
    }

    private static string[] Names(TempFolder folder) =>
        [.. Directory.GetFiles(folder["backups"]).Select(file => Path.GetFileName(file)!).Order(StringComparer.Ordinal)];
}
