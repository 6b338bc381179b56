using Foundress.Storage.Backups;
using Microsoft.Extensions.Time.Testing;

namespace Foundress.Storage.Tests;

public class BackupTests
{
    private static readonly DateTimeOffset Start = new(2025, 7, 1, 9, 30, 15, TimeSpan.Zero);

    [Fact]
    public async Task Open_WithEntriesAndNoFreshBackup_MakesADatedOne()
    {
        using var folder = new TempFolder();
        var time = new FakeTimeProvider(Start);
        var options = new BookStoreOptions { Time = time };
        using (var store = await BookStore.OpenAsync(folder.Path, options))
        {
            Assert.Empty(store.Backups());
            await store.AppendAsync("home", Some.Entries(3));
        }

        using (await BookStore.OpenAsync(folder.Path, options))
            Assert.Equal(["foundress-20250701-093015Z.db"], Names(folder));
        time.Advance(TimeSpan.FromHours(23.9));
        using (await BookStore.OpenAsync(folder.Path, options))
            Assert.Single(Names(folder));
        time.Advance(TimeSpan.FromHours(0.1));
        using (await BookStore.OpenAsync(folder.Path, options))
            Assert.Equal(["foundress-20250701-093015Z.db", "foundress-20250702-093015Z.db"], Names(folder));
    }

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

        BookStore.Restore(folder.Path, folder["mine.db"], options);
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
    public async Task Backup_WhileInUse_HoldsExactlyWhatWasThere()
    {
        using var folder = new TempFolder();
        using var store = await BookStore.OpenAsync(folder.Path);
        await store.AppendAsync("home", Some.Entries(300));
        var backup = await store.BackupAsync(folder["copy.db"]);
        await store.AppendAsync("home", Some.Entries(10, from: 300));
        Assert.Equal(new FileInfo(backup.File).Length, backup.Bytes);
        using var elsewhere = new TempFolder();
        Assert.Equal(300, BookStore.Restore(elsewhere.Path, backup.File).Entries);
        using var restored = await BookStore.OpenAsync(elsewhere.Path);
        Assert.Equal(Some.Entries(300), await Some.AllAsync(restored));
        Assert.Empty(Directory.GetFiles(folder.Path, "*.part"));
    }

    [Fact]
    public async Task Backup_TwoInOneSecond_BothStay()
    {
        using var folder = new TempFolder();
        using var store = await BookStore.OpenAsync(folder.Path, new BookStoreOptions { Time = new FakeTimeProvider(Start) });
        await store.BackupAsync();
        await store.BackupAsync();
        Assert.Equal([Start, Start], store.Backups().Select(b => b.Made));
        Assert.Equal(["", ""], store.Backups().Select(b => b.Reason));
    }

    [Fact]
    public async Task Backup_ManyAtOnce_AllStay()
    {
        using var folder = new TempFolder();
        using var store = await BookStore.OpenAsync(folder.Path, new BookStoreOptions { Time = new FakeTimeProvider(Start) });
        var made = await Task.WhenAll(Enumerable.Range(0, 12).Select(_ => store.BackupAsync()));
        Assert.Equal(12, made.Select(backup => backup.File).Distinct().Count());
        Assert.Equal(12, store.Backups().Count);
    }

    [Fact]
    public async Task CheckWritable_AnyTime_ChangesNothing()
    {
        using var folder = new TempFolder();
        using var store = await BookStore.OpenAsync(folder.Path);
        await store.AppendAsync("home", Some.Entries(3));
        var before = store.Incarnation;
        await store.CheckWritableAsync();
        Assert.Equal(3, await store.CheckAsync());
        Assert.Equal(Some.Entries(3), await Some.AllAsync(store));
        using var again = await BookStore.OpenAsync(folder.Path);
        Assert.Equal(before, again.Incarnation);
    }

    [Fact]
    public async Task Backup_OverAFile_IsRefused()
    {
        using var folder = new TempFolder();
        using var store = await BookStore.OpenAsync(folder.Path);
        await File.WriteAllTextAsync(folder["notes.txt"], "dear diary");
        var error = await Assert.ThrowsAsync<StorageException>(() => store.BackupAsync(folder["notes.txt"]));
        Assert.Equal(StorageFault.BadBackup, error.Fault);
        Assert.Equal("dear diary", await File.ReadAllTextAsync(folder["notes.txt"]));
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

        var result = BookStore.Restore(folder.Path, folder["three.db"]);
        Assert.Equal((3, false), (result.Entries, result.WasDamaged));
        using (var store = await BookStore.OpenAsync(folder.Path))
        {
            Assert.Equal(Some.Entries(3), await Some.AllAsync(store));
            Assert.NotEqual(before, store.Incarnation);
        }

        Assert.Equal(5, BookStore.Restore(folder.Path, result.Kept!).Entries);
    }

    [Fact]
    public async Task Restore_WhileOpen_IsRefusedAndChangesNothing()
    {
        using var folder = new TempFolder();
        using var store = await BookStore.OpenAsync(folder.Path);
        await store.AppendAsync("home", Some.Entries(3));
        await store.BackupAsync(folder["three.db"]);
        await store.AppendAsync("home", Some.Entries(2, from: 3));
        var error = Assert.Throws<StorageException>(() => BookStore.Restore(folder.Path, folder["three.db"]));
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
            var error = Assert.Throws<StorageException>(() => BookStore.Restore(folder.Path, folder[name]));
            Assert.Equal(StorageFault.BadBackup, error.Fault);
            Assert.Contains(folder[name], error.Message, StringComparison.Ordinal);
        }

        using var again = await BookStore.OpenAsync(folder.Path);
        Assert.Equal(2_000, await again.CheckAsync());
    }

    private static string[] Names(TempFolder folder) =>
        [.. Directory.GetFiles(folder["backups"]).Select(file => Path.GetFileName(file)!).Order(StringComparer.Ordinal)];
}
