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

    [Fact]
    public async Task Backup_WithACompanion_HasItBesideAndTakesItAlongWhenItGoes()
    {
        using var folder = new TempFolder();
        var time = new FakeTimeProvider(Start);
        var companion = new Companion();
        var options = new BookStoreOptions { Time = time, DaysKept = 1, Companion = companion };
        using var store = await BookStore.OpenAsync(folder.Path, options);
        await store.AppendAsync("home", Some.Entries(1));
        var first = (await store.BackUpIfDueAsync())!;
        Assert.Equal(first.File + ".accounts", first.Accounts);
        Assert.Equal("the accounts", await File.ReadAllTextAsync(first.Accounts!));
        Assert.Equal(first, Assert.Single(store.Backups()));
        time.Advance(TimeSpan.FromDays(2));
        companion.Text = null;
        var second = (await store.BackUpIfDueAsync())!;
        Assert.Null(second.Accounts);
        // The older one went with what lay beside it.
        Assert.Equal([Path.GetFileName(second.File)], Names(folder));

        companion.Text = "";
        await File.WriteAllTextAsync(folder["mine.db.accounts"], "somebody's");
        Assert.Equal(StorageFault.BadBackup, (await Assert.ThrowsAsync<StorageException>(() => store.BackupAsync(folder["mine.db"]))).Fault);
        Assert.Equal("somebody's", await File.ReadAllTextAsync(folder["mine.db.accounts"]));
        // One that cannot be whole is not made, so that it stays due.
        time.Advance(TimeSpan.FromDays(2));
        await Assert.ThrowsAsync<StorageException>(() => store.BackUpIfDueAsync());
        Assert.Equal([Path.GetFileName(second.File)], Directory.GetFiles(Path.Combine(folder.Path, "backups")).Select(Path.GetFileName));
    }

    [Fact]
    public async Task Restore_Done_TellsTheFingerprintOfTheBackup()
    {
        using var folder = new TempFolder();
        var entries = Some.Entries(50).ToArray();
        using (var store = await BookStore.OpenAsync(folder.Path))
        {
            await store.AppendAsync("home", entries);
            await store.BackupAsync(folder["mine.db"]);
            await store.AppendAsync("home", Some.Entries(60).ToArray());
        }

        var wanted = new Transfer.EntryDigest();
        foreach (var entry in entries)
            wanted.Add(Model.EntryRows.ToRow(entry, Start));
        var result = await BookStore.RestoreAsync(folder.Path, folder["mine.db"]);
        Assert.Equal((50, wanted.ToString()), (result.Entries, result.Fingerprint));
    }

    private sealed class Companion : Backups.IBackupCompanion
    {
        public string? Text { get; set; } = "the accounts";

        public bool Copy(string target)
        {
            if (Text is null)
                return false;
            if (Text.Length == 0)
                throw new StorageException(StorageFault.Disk, target, "The accounts cannot be read.");
            File.WriteAllText(target, Text);
            return true;
        }
    }

    private static string[] Names(TempFolder folder) =>
        [.. Directory.GetFiles(folder["backups"]).Select(file => Path.GetFileName(file)!).Order(StringComparer.Ordinal)];
}
