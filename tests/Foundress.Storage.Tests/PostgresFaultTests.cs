using System.Net;
using System.Net.Sockets;
using Foundress.PostgresForTests;

namespace Foundress.Storage.Tests;

/// <summary>Whatever is wrong with the PostgreSQL database, the message says so, tells no password, and nothing recorded is lost.</summary>
public class PostgresFaultTests
{
    private static readonly BookStoreOptions Brief = new() { BackupAtStart = false, Patience = TimeSpan.FromMilliseconds(200) };

    [Fact]
    public async Task Open_NoServerThere_SaysSo()
    {
        using var folder = new TempFolder();
        using var free = new TcpListener(IPAddress.Loopback, 0);
        free.Start();
        var port = ((IPEndPoint)free.LocalEndpoint).Port;
        free.Stop();
        var address = PostgresAddress.TryParse($"Host=127.0.0.1;Port={port};Database=book;Username=keeper;Password=hush-hush", out _);
        var error = await Assert.ThrowsAsync<StorageException>(() => BookStore.OpenAsync(folder.Path, Brief with { Database = address }));
        Assert.Equal(StorageFault.Unreachable, error.Fault);
        Assert.Contains($"'book' on 127.0.0.1:{port}", error.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("hush", error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Open_ServerWithoutThatName_SaysSo()
    {
        using var folder = new TempFolder();
        var address = PostgresAddress.TryParse("Host=nowhere.invalid;Database=book;Username=keeper", out _);
        var error = await Assert.ThrowsAsync<StorageException>(() => BookStore.OpenAsync(folder.Path, Brief with { Database = address }));
        Assert.Equal(StorageFault.Unreachable, error.Fault);
    }

    [Theory]
    [InlineData("wrong-hush-hush")]
    [InlineData("")]
    public async Task Open_WrongPassword_IsNotLetInAndNotToldIt(string password)
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        var address = (await PostgresCluster.Shared).Address(book.Database!.Database, password: password);
        var error = await Assert.ThrowsAsync<StorageException>(() => BookStore.OpenAsync(book.Folder.Path, Brief with { Database = address }));
        Assert.Equal(StorageFault.Refused, error.Fault);
        Assert.Contains("'keeper'", error.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("hush", error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Open_NoSuchDatabase_SaysHowToMakeIt()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        var address = (await PostgresCluster.Shared).Address("no_such_book");
        var error = await Assert.ThrowsAsync<StorageException>(() => BookStore.OpenAsync(book.Folder.Path, Brief with { Database = address }));
        Assert.Equal(StorageFault.Missing, error.Fault);
        Assert.Contains("createdb", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ALTER DATABASE {0} OWNER TO chief", StorageFault.Refused, "ALTER DATABASE")]
    [InlineData("ALTER DATABASE {0} SET default_transaction_read_only = on", StorageFault.ReadOnly, "read only")]
    [InlineData("CREATE TABLE honey (jars int)", StorageFault.NotABook, "'honey'")]
    public async Task Open_DatabaseThatCannotBeUsed_IsRefusedAndLeftAsItIs(string how, StorageFault fault, string words)
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres, prepared: false);
        await book.ExecuteAsync(string.Format(System.Globalization.CultureInfo.InvariantCulture, how, book.Database!.Database));
        var error = await Assert.ThrowsAsync<StorageException>(() => book.OpenAsync(Brief));
        Assert.Equal(fault, error.Fault);
        Assert.Contains(words, error.Message, StringComparison.Ordinal);
        Assert.Equal(true, await book.ExecuteAsync("SELECT to_regclass('entries') IS NULL"));
    }

    [Fact]
    public async Task Open_DatabaseInAnotherEncoding_IsRefused()
    {
        await using var any = await TestBook.MakeAsync(DatabaseKind.Postgres);
        var cluster = await PostgresCluster.Shared;
        var latin = await cluster.EmptyAsync("ENCODING 'LATIN1' LC_COLLATE 'C' LC_CTYPE 'C' TEMPLATE template0");
        var error = await Assert.ThrowsAsync<StorageException>(() => BookStore.OpenAsync(any.Folder.Path, Brief with { Database = latin }));
        await cluster.DropAsync(latin);
        Assert.Equal(StorageFault.NotABook, error.Fault);
        Assert.Contains("UTF8", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Open_DatabaseOfANewerVersion_IsRefused()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        await book.ExecuteAsync("""INSERT INTO "__EFMigrationsHistory" VALUES ('99990101000000_Later', '99.0.0')""");
        var error = await Assert.ThrowsAsync<StorageException>(() => book.OpenAsync(Brief));
        Assert.Equal(StorageFault.Newer, error.Fault);
        Assert.Contains("99990101000000_Later", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Open_EmptyDatabaseThoughThereIsABookInTheFolder_IsRefusedRatherThanBegunAnew()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres, prepared: false);
        using (var file = await BookStore.OpenAsync(book.Folder.Path))
            await file.AppendAsync("home", Some.Entries(3));
        var error = await Assert.ThrowsAsync<StorageException>(() => book.OpenAsync(Brief));
        Assert.Equal(StorageFault.Missing, error.Fault);
        Assert.Contains("foundress transfer", error.Message, StringComparison.Ordinal);
        Assert.Equal(true, await book.ExecuteAsync("SELECT to_regclass('entries') IS NULL"));
    }

    [Fact]
    public async Task Open_ByManyAtOnce_MakesOneBook()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres, prepared: false);
        var folders = Enumerable.Range(0, 5).Select(_ => new TempFolder()).ToArray();
        var stores = await Task.WhenAll(folders.Select(folder => Task.Run(() => BookStore.OpenAsync(folder.Path, book.Options()))));
        Assert.Single(stores.Select(store => store.Incarnation).Distinct());
        await Task.WhenAll(stores.Select((store, n) => Task.Run(() => store.AppendAsync("home", Some.Entries(20, from: 10 * n)))));
        Assert.Equal(60, await stores[0].CheckAsync());
        Array.ForEach(stores, store => store.Dispose());
        Array.ForEach(folders, folder => folder.Dispose());
    }

    // As after a dump was read back, or a copy of the server took over: devices must send again what they hold.
    [Fact]
    public async Task Open_CopyOfADatabase_HasAnotherIncarnation()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        Guid incarnation;
        using (var store = await book.OpenAsync())
        {
            incarnation = store.Incarnation;
            await store.AppendAsync("home", Some.Entries(3));
        }

        var cluster = await PostgresCluster.Shared;
        var copy = await cluster.EmptyAsync($"TEMPLATE {book.Database!.Database}");
        using (var copied = await BookStore.OpenAsync(book.Folder.Path, Brief with { Database = copy }))
        {
            Assert.NotEqual(incarnation, copied.Incarnation);
            Assert.Equal(3, await copied.CountAsync("home"));
        }

        await cluster.DropAsync(copy);
        using var again = await book.OpenAsync(Brief);
        Assert.Equal(incarnation, again.Incarnation);
    }

    [Fact]
    public async Task Read_AfterTheBookWasSetBackByOthers_TellsTheNewIncarnation()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        using var store = await book.OpenAsync();
        var before = store.Incarnation;
        await book.ExecuteAsync("UPDATE book SET place = 'another server'");
        await store.ReadAsync("home", 0, 1);
        Assert.NotEqual(before, store.Incarnation);
        var after = store.Incarnation;
        await store.ReadAsync("home", 0, 1);
        Assert.Equal(after, store.Incarnation);
    }

    [Fact]
    public async Task Append_WhileAnotherProgramHoldsTheOperation_SaysSoAndMayBeRepeated()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        using var store = await book.OpenAsync(Brief);
        using var other = new Postgres.PostgresDatabase(book.Folder.Data, book.Database!, new BookStoreOptions());
        await using (var context = other.Open())
        {
            await using var held = await context.Database.BeginTransactionAsync();
            await other.TakeTurnAsync(context, "home", default);
            var error = await Assert.ThrowsAsync<StorageException>(() => store.AppendAsync("home", Some.Entries(1)));
            Assert.Equal(StorageFault.InUse, error.Fault);
        }

        Assert.Equal(new AppendResult(1, 0), await store.AppendAsync("home", Some.Entries(1)));
    }

    // The server's own code for a full disk, raised in the middle of an exchange.
    [Fact]
    public async Task Append_DiskFull_KeepsAllThatWasAcknowledgedAndNothingElse()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        using var store = await book.OpenAsync(Brief);
        await store.AppendAsync("home", Some.Entries(50));
        await RaiseAsync(book, "53100", "(SELECT count(*) FROM entries) >= 70");
        var error = await Assert.ThrowsAsync<StorageException>(() => store.AppendAsync("home", Some.Entries(50, from: 50)));
        Assert.Equal(StorageFault.DiskFull, error.Fault);
        Assert.Contains("Free some space", error.Message, StringComparison.Ordinal);
        Assert.Equal(Some.Entries(50), await Some.AllAsync(store));
        await book.ExecuteAsync("DROP TRIGGER trouble ON entries");
        Assert.Equal(new AppendResult(50, 0), await store.AppendAsync("home", Some.Entries(50, from: 50)));
        Assert.Equal(100, await store.CheckAsync());
    }

    [Theory]
    [InlineData("40P01", 3, true)]
    [InlineData("40001", 3, true)]
    [InlineData("40P01", 100, false)]
    public async Task Append_ThatRunsIntoADeadlock_IsTriedAgainAFewTimes(string code, int times, bool succeeds)
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        using var store = await book.OpenAsync(Brief);
        // Numbers of a sequence do not come back with the transaction.
        await book.ExecuteAsync("CREATE SEQUENCE tries; GRANT ALL ON SEQUENCE tries TO PUBLIC");
        await RaiseAsync(book, code, $"nextval('tries') <= {times}");
        if (succeeds)
        {
            Assert.Equal(new AppendResult(1, 0), await store.AppendAsync("home", Some.Entries(1)));
        }
        else
        {
            var error = await Assert.ThrowsAsync<StorageException>(() => store.AppendAsync("home", Some.Entries(1)));
            Assert.Equal(StorageFault.InUse, error.Fault);
            Assert.Equal(0, await store.CountAsync("home"));
        }
    }

    [Fact]
    public async Task Read_TableGone_SaysSo()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        using var store = await book.OpenAsync(Brief);
        await book.ExecuteAsync("DROP TABLE entries");
        var error = await Assert.ThrowsAsync<StorageException>(() => store.ReadAsync("home", 0, 10));
        Assert.Equal(StorageFault.Damaged, error.Fault);
    }

    [Fact]
    public async Task Read_AfterConnectionsWereCut_FindsItsWayBack()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        using var store = await book.OpenAsync(Brief);
        await store.AppendAsync("home", Some.Entries(2));
        await book.ExecuteAsync("SELECT count(pg_terminate_backend(pid)) FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()");
        Assert.Equal(new AppendResult(1, 2), await store.AppendAsync("home", Some.Entries(3)));
        Assert.Equal(Some.Entries(3), await Some.AllAsync(store));
    }

    [Fact]
    public async Task Restore_IntoADatabaseWithEntries_IsRefusedAndChangesNothing()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        using var store = await book.OpenAsync(Brief);
        await store.AppendAsync("home", Some.Entries(3));
        var backup = await store.BackupAsync();
        await store.AppendAsync("home", Some.Entries(2, from: 3));
        var incarnation = store.Incarnation;
        var error = await Assert.ThrowsAsync<StorageException>(() => BookStore.RestoreAsync(book.Folder.Path, backup.File, book.Options()));
        Assert.Equal(StorageFault.NotEmpty, error.Fault);
        Assert.Equal(Some.Entries(5), await Some.AllAsync(store));
        Assert.Equal(incarnation, store.Incarnation);
    }

    [Fact]
    public async Task Restore_BadFile_IsRefusedAndChangesNothing()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres, prepared: false);
        await File.WriteAllTextAsync(book.Folder["text.db"], "not a database at all, only some text");
        foreach (var name in (string[])["text.db", "absent.db"])
        {
            var error = await Assert.ThrowsAsync<StorageException>(() => BookStore.RestoreAsync(book.Folder.Path, book.Folder[name], book.Options()));
            Assert.Equal(StorageFault.BadBackup, error.Fault);
        }

        Assert.Equal(true, await book.ExecuteAsync("SELECT to_regclass('entries') IS NULL"));
        Assert.Empty(Directory.GetFiles(book.Folder.Path, "*.restoring"));
    }

    [Fact]
    public async Task Backup_ToAFolderThatCannotBeMade_SaysSoAndLeavesNothing()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres);
        using var store = await book.OpenAsync(Brief);
        await File.WriteAllTextAsync(book.Folder["a-file"], "");
        var error = await Assert.ThrowsAsync<StorageException>(() => store.BackupAsync(Path.Combine(book.Folder["a-file"], "copy.db")));
        Assert.Equal(StorageFault.ReadOnly, error.Fault);
    }

    private static Task RaiseAsync(TestBook book, string code, string when) => book.ExecuteAsync(
        $"""
        CREATE FUNCTION trouble() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
            IF {when} THEN RAISE EXCEPTION 'trouble' USING ERRCODE = '{code}'; END IF;
            RETURN NEW;
        END $$;
        CREATE TRIGGER trouble BEFORE INSERT ON entries FOR EACH ROW EXECUTE FUNCTION trouble();
        """);
}
