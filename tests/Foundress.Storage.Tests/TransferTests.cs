using Foundress.Storage.Transfer;

namespace Foundress.Storage.Tests;

public class TransferTests
{
    [Fact]
    public async Task Transfer_WholeBook_ArrivesInTheSameOrderAndIsCompared()
    {
        await using var book = await FilledAsync();
        var done = await BookTransfer.RunAsync(book.Folder.Path, book.Options());
        Assert.Equal([("demo", 2L, 2L), ("home", 4_500L, 4_500L)], done.Select(one => (one.Operation, one.Entries, one.Added)));
        Assert.All(done, one => Assert.True(one.IsSame));
        Assert.All(done, one => Assert.Equal(64, one.Fingerprint.Length));
        using var target = await book.OpenAsync();
        Assert.Equal(Some.Entries(4_500), await Some.AllAsync(target));
        // And the file is as it was.
        using var source = await BookStore.OpenAsync(book.Folder.Path);
        Assert.Equal(4_502, await source.CheckAsync());
        // When they came is carried over too.
        Assert.Equal(
            (await source.ReadRowsAsync("home", 0, 10, default)).Select(row => row.ReceivedAt),
            (await target.ReadRowsAsync("home", 0, 10, default)).Select(row => row.ReceivedAt));
    }

    [Fact]
    public async Task Transfer_CutOffAndRunAgain_GoesOn()
    {
        await using var book = await FilledAsync();
        using (var half = await BookStore.OpenAsync(book.Folder.Path, book.Options(new BookStoreOptions { TakesOver = true, BackupAtStart = false })))
            await half.AppendAsync("home", Some.Entries(2_100));
        Assert.Equal(2_402, (await BookTransfer.RunAsync(book.Folder.Path, book.Options())).Sum(one => one.Added));
        var again = await BookTransfer.RunAsync(book.Folder.Path, book.Options());
        Assert.Equal(0, again.Sum(one => one.Added));
        Assert.All(again, one => Assert.True(one.IsSame));
    }

    [Fact]
    public async Task Transfer_OverAnotherEntryWithTheSameId_TellsWhereTheyDiffer()
    {
        await using var book = await FilledAsync();
        using (var there = await BookStore.OpenAsync(book.Folder.Path, book.Options(new BookStoreOptions { TakesOver = true, BackupAtStart = false })))
            await there.AppendAsync("home", [Some.Entry(7, clock: -1_000_000), Some.Entry(8, clock: 1_000_000), Some.Entry(9_999)]);
        var home = (await BookTransfer.RunAsync(book.Folder.Path, book.Options())).Single(one => one.Operation == "home");
        // The one that comes first in the book is held: there for 7, in the folder for 8. What only the database has does not count.
        Assert.Equal([Some.Entry(7).Id.Value], home.Different);
        Assert.False(home.IsSame);
        Assert.Equal(4_499, home.Added);
    }

    [Fact]
    public async Task Transfer_WhileTheBookIsOpen_IsRefused()
    {
        await using var book = await FilledAsync();
        using var server = await BookStore.OpenAsync(book.Folder.Path);
        var error = await Assert.ThrowsAsync<StorageException>(() => BookTransfer.RunAsync(book.Folder.Path, book.Options()));
        Assert.Equal(StorageFault.InUse, error.Fault);
        Assert.Equal(true, await book.ExecuteAsync("SELECT to_regclass('entries') IS NULL"));
    }

    [Fact]
    public async Task Transfer_NoBookThere_IsRefused()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres, prepared: false);
        var error = await Assert.ThrowsAsync<StorageException>(() => BookTransfer.RunAsync(book.Folder.Path, book.Options()));
        Assert.Equal(StorageFault.Missing, error.Fault);
        Assert.False(File.Exists(book.Folder.Data.Database));
    }

    [Fact]
    public void Digest_AnyOrder_IsTheSameAndAnyChangeIsNot()
    {
        static string Of(IEnumerable<Book.Journal.Entry> entries)
        {
            var digest = new EntryDigest();
            foreach (var entry in entries)
                digest.Add(Model.EntryRows.ToRow(entry, DateTimeOffset.UnixEpoch));
            return digest.ToString();
        }

        var entries = Some.Entries(20);
        var whole = Of(entries);
        Assert.Equal(whole, Of(entries.Reverse()));
        Assert.NotEqual(whole, Of(entries[1..]));
        Assert.NotEqual(whole, Of([.. entries, entries[0]]));
        Assert.NotEqual(whole, Of([.. entries[1..], entries[0] with { Payload = entries[0].Payload + " " }]));
        Assert.NotEqual(whole, Of([.. entries[1..], entries[0] with { Schema = 2 }]));
        // What ends one field is not what begins the next.
        Assert.NotEqual(
            Of([entries[0] with { Author = "ab", Device = "c" }]), Of([entries[0] with { Author = "a", Device = "bc" }]));
        Assert.Equal(new string('0', 64), Of([]));
        // Worked out with Python's hashlib: id and schema big-endian, then operation, author, device, clock, kind and payload,
        // each as UTF-8 behind its length in four bytes.
        Assert.Equal("41078687f85fc59051460828db62de10805ca45a5166f014183fcd7d94516d41", whole);
    }

    private static async Task<TestBook> FilledAsync()
    {
        var book = await TestBook.MakeAsync(DatabaseKind.Postgres, prepared: false);
        using var file = await BookStore.OpenAsync(book.Folder.Path);
        await file.AppendAsync("home", Some.Entries(4_500));
        await file.AppendAsync("demo", Some.Entries(2, "demo"));
        return book;
    }
}
