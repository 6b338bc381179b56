using Microsoft.Extensions.Time.Testing;

namespace Foundress.Storage.Tests;

public abstract class BackupTests(DatabaseKind kind)
{
    private static readonly DateTimeOffset Start = new(2025, 7, 1, 9, 30, 15, TimeSpan.Zero);

    [Fact]
    public async Task Open_WithEntriesAndNoFreshBackup_MakesADatedOne()
    {
        await using var book = await TestBook.MakeAsync(kind);
        var time = new FakeTimeProvider(Start);
        var options = new BookStoreOptions { Time = time };
        using (var store = await book.OpenAsync(options))
        {
            Assert.Empty(store.Backups());
            await store.AppendAsync("home", Some.Entries(3));
        }

        using (await book.OpenAsync(options))
            Assert.Equal(["foundress-20250701-093015Z.db"], Names(book.Folder));
        time.Advance(TimeSpan.FromHours(23.9));
        using (await book.OpenAsync(options))
            Assert.Single(Names(book.Folder));
        time.Advance(TimeSpan.FromHours(0.1));
        using (await book.OpenAsync(options))
            Assert.Equal(["foundress-20250701-093015Z.db", "foundress-20250702-093015Z.db"], Names(book.Folder));
    }

    [Fact]
    public async Task Backup_WhileInUse_HoldsExactlyWhatWasThere()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        await store.AppendAsync("home", Some.Entries(300));
        var backup = await store.BackupAsync(book.Folder["copy.db"]);
        await store.AppendAsync("home", Some.Entries(10, from: 300));
        Assert.Equal(new FileInfo(backup.File).Length, backup.Bytes);
        // Whichever database it was made from, it can be taken back into either.
        foreach (var other in (DatabaseKind[])[DatabaseKind.Sqlite, kind])
        {
            await using var elsewhere = await TestBook.MakeAsync(other, prepared: false);
            Assert.Equal(300, (await BookStore.RestoreAsync(elsewhere.Folder.Path, backup.File, elsewhere.Options())).Entries);
            using var restored = await elsewhere.OpenAsync();
            Assert.Equal(Some.Entries(300), await Some.AllAsync(restored));
            Assert.NotEqual(store.Incarnation, restored.Incarnation);
            Assert.Equal(300, await restored.CheckAsync());
            Assert.Equal(new AppendResult(1, 0), await restored.AppendAsync("home", [Some.Entry(1_000)]));
        }

        Assert.Empty(Directory.GetFiles(book.Folder.Path, "*.part"));
    }

    [Fact]
    public async Task Backup_TwoInOneSecond_BothStay()
    {
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync(new BookStoreOptions { Time = new FakeTimeProvider(Start) });
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
        await using var book = await TestBook.MakeAsync(kind);
        using var store = await book.OpenAsync();
        await File.WriteAllTextAsync(book.Folder["notes.txt"], "dear diary");
        var error = await Assert.ThrowsAsync<StorageException>(() => store.BackupAsync(book.Folder["notes.txt"]));
        Assert.Equal(StorageFault.BadBackup, error.Fault);
        Assert.Equal("dear diary", await File.ReadAllTextAsync(book.Folder["notes.txt"]));
    }

    private static string[] Names(TempFolder folder) =>
        [.. Directory.GetFiles(folder["backups"]).Select(file => Path.GetFileName(file)!).Order(StringComparer.Ordinal)];
}

public sealed class BackupTestsOnSqlite() : BackupTests(DatabaseKind.Sqlite);

public sealed class BackupTestsOnPostgres() : BackupTests(DatabaseKind.Postgres);
