using Microsoft.Data.Sqlite;

namespace Foundress.Storage.Tests;

/// <summary>Whatever is wrong with the SQLite file, the message says so and nothing recorded is lost.</summary>
public class FaultTests
{
    private static readonly BookStoreOptions NoBackups = new() { BackupAtStart = false };

    [Fact]
    public async Task Open_DamagedFile_IsRefusedAndLeftAsItIs()
    {
        using var folder = new TempFolder();
        await FillAsync(folder, 2_000);
        using (var store = await BookStore.OpenAsync(folder.Path))
            await store.BackupAsync();
        Damage(folder);
        var before = await File.ReadAllBytesAsync(folder.Data.Database);
        var error = await Assert.ThrowsAsync<StorageException>(() => BookStore.OpenAsync(folder.Path));
        Assert.Equal(StorageFault.Damaged, error.Fault);
        Assert.Contains(folder.Data.Database, error.Message, StringComparison.Ordinal);
        Assert.Contains("foundress restore", error.Message, StringComparison.Ordinal);
        Assert.Equal(before, await File.ReadAllBytesAsync(folder.Data.Database));
    }

    [Fact]
    public async Task Restore_OverDamagedFile_KeepsItByteForByte()
    {
        using var folder = new TempFolder();
        await FillAsync(folder, 2_000);
        string backup;
        using (var store = await BookStore.OpenAsync(folder.Path, NoBackups))
            backup = (await store.BackupAsync()).File;
        Damage(folder);
        var damaged = await File.ReadAllBytesAsync(folder.Data.Database);
        var result = await BookStore.RestoreAsync(folder.Path, backup);
        Assert.True(result.WasDamaged);
        Assert.Equal(2_000, result.Entries);
        Assert.Equal(damaged, await File.ReadAllBytesAsync(result.Kept!));
        using var again = await BookStore.OpenAsync(folder.Path);
        Assert.Equal(Some.Entries(2_000), await Some.AllAsync(again));
    }

    [Theory]
    [InlineData("colony,date,mites\n12,2025-07-01,4\n")]
    [InlineData("x")]
    public async Task Open_FileThatIsNoDatabase_IsRefusedAndLeftAsItIs(string content)
    {
        using var folder = new TempFolder();
        await File.WriteAllTextAsync(folder.Data.Database, content);
        var error = await Assert.ThrowsAsync<StorageException>(() => BookStore.OpenAsync(folder.Path));
        Assert.Equal(StorageFault.NotABook, error.Fault);
        Assert.Equal(content, await File.ReadAllTextAsync(folder.Data.Database));
    }

    [Fact]
    public async Task Open_DatabaseOfAnotherProgram_IsRefusedAndLeftAsItIs()
    {
        using var folder = new TempFolder();
        Execute(folder.Data.Database, "CREATE TABLE honey (jars INTEGER)");
        var before = await File.ReadAllBytesAsync(folder.Data.Database);
        var error = await Assert.ThrowsAsync<StorageException>(() => BookStore.OpenAsync(folder.Path));
        Assert.Equal(StorageFault.NotABook, error.Fault);
        Assert.Equal(before, await File.ReadAllBytesAsync(folder.Data.Database));
    }

    [Fact]
    public async Task Open_DatabaseOfANewerVersion_IsRefusedAndLeftAsItIs()
    {
        using var folder = new TempFolder();
        await FillAsync(folder, 3);
        Execute(folder.Data.Database, "INSERT INTO __EFMigrationsHistory VALUES ('99990101000000_Later', '99.0.0')");
        var before = await File.ReadAllBytesAsync(folder.Data.Database);
        var error = await Assert.ThrowsAsync<StorageException>(() => BookStore.OpenAsync(folder.Path));
        Assert.Equal(StorageFault.Newer, error.Fault);
        Assert.Contains("99990101000000_Later", error.Message, StringComparison.Ordinal);
        Assert.Equal(before, await File.ReadAllBytesAsync(folder.Data.Database));
    }

    [Fact]
    public async Task Open_DatabaseGoneThoughBackedUp_IsRefusedRatherThanBegunAnew()
    {
        using var folder = new TempFolder();
        await FillAsync(folder, 3);
        string backup;
        using (var store = await BookStore.OpenAsync(folder.Path))
            backup = (await store.BackupAsync()).File;
        File.Delete(folder.Data.Database);
        var error = await Assert.ThrowsAsync<StorageException>(() => BookStore.OpenAsync(folder.Path));
        Assert.Equal(StorageFault.Missing, error.Fault);
        Assert.False(File.Exists(folder.Data.Database));
        Assert.Equal(3, (await BookStore.RestoreAsync(folder.Path, backup)).Entries);
    }

    [Fact]
    public async Task Open_CutOffWhileBeingMade_BeginsAgain()
    {
        using var folder = new TempFolder();
        Execute(folder.Data.Database, """
            CREATE TABLE __EFMigrationsLock (Id INTEGER NOT NULL CONSTRAINT PK___EFMigrationsLock PRIMARY KEY, Timestamp TEXT NOT NULL);
            INSERT INTO __EFMigrationsLock VALUES (1, '2025-07-01 00:00:00+00:00');
            """);
        using var store = await BookStore.OpenAsync(folder.Path);
        await store.AppendAsync("home", Some.Entries(1));
        Assert.Equal(1, await store.CheckAsync());
    }

    [Fact]
    public async Task Append_DiskFull_KeepsAllThatWasAcknowledgedAndNothingElse()
    {
        using var folder = new TempFolder();
        var acknowledged = 0;
        using (var store = await BookStore.OpenAsync(folder.Path, NoBackups with { GreatestPages = 60 }))
        {
            var error = await Assert.ThrowsAsync<StorageException>(async () =>
            {
                while (true)
                {
                    await store.AppendAsync("home", Some.Entries(50, from: acknowledged));
                    acknowledged += 50;
                }
            });
            Assert.Equal(StorageFault.DiskFull, error.Fault);
            Assert.Contains("Free some space", error.Message, StringComparison.Ordinal);
            // Reading goes on.
            Assert.Equal(acknowledged, await store.CountAsync("home"));
        }

        Assert.InRange(acknowledged, 50, 10_000);
        using var again = await BookStore.OpenAsync(folder.Path, NoBackups);
        Assert.Equal(Some.Entries(acknowledged), await Some.AllAsync(again));
        await again.AppendAsync("home", Some.Entries(50, from: acknowledged));
        Assert.Equal(acknowledged + 50, await again.CheckAsync());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Open_ReadOnlyFileOrFolder_IsRefusedAndLeftAsItIs(bool folderToo)
    {
        if (!OperatingSystem.IsLinux())
        {
            Assert.Skip("Rights to files are tried out on Linux only.");
            return;
        }

        using var folder = new TempFolder();
        await FillAsync(folder, 3);
        var before = await File.ReadAllBytesAsync(folder.Data.Database);
        File.SetUnixFileMode(folder.Data.Database, (UnixFileMode)0b100_100_100);
        File.SetUnixFileMode(folder.Path, (UnixFileMode)(folderToo ? 0b101_101_101 : 0b111_111_111));
        foreach (var file in Directory.GetFiles(folder.Path, "*.lock"))
            File.SetUnixFileMode(file, (UnixFileMode)(folderToo ? 0b100_100_100 : 0b110_110_110));
        var error = FileIdentity.Nobodys(() => BookStore.OpenAsync(folder.Path).GetAwaiter().GetResult().Dispose());
        Assert.Equal(StorageFault.ReadOnly, Assert.IsType<StorageException>(error).Fault);
        Assert.Equal(before, await File.ReadAllBytesAsync(folder.Data.Database));
    }

    [Fact]
    public async Task Open_FolderThatCannotBeMade_IsRefused()
    {
        using var folder = new TempFolder();
        await File.WriteAllTextAsync(folder["a-file"], "");
        var error = await Assert.ThrowsAsync<StorageException>(() => BookStore.OpenAsync(Path.Combine(folder["a-file"], "data")));
        Assert.Equal(StorageFault.ReadOnly, error.Fault);
    }

    [Fact]
    public async Task Append_WhileAnotherProgramHoldsTheFile_SaysSoAndMayBeRepeated()
    {
        using var folder = new TempFolder();
        using var store = await BookStore.OpenAsync(folder.Path, NoBackups with { Patience = TimeSpan.FromSeconds(1) });
        await using (var other = new SqliteConnection($"Data Source={folder.Data.Database};Pooling=false"))
        {
            await other.OpenAsync();
            await using var held = other.BeginTransaction();
            var error = await Assert.ThrowsAsync<StorageException>(() => store.AppendAsync("home", Some.Entries(1)));
            Assert.Equal(StorageFault.InUse, error.Fault);
        }

        Assert.Equal(new AppendResult(1, 0), await store.AppendAsync("home", Some.Entries(1)));
    }

    private static async Task FillAsync(TempFolder folder, int count)
    {
        using var store = await BookStore.OpenAsync(folder.Path, NoBackups);
        await store.AppendAsync("home", Some.Entries(count));
    }

    // Overwrites the middle pages, leaving the header that says what the file is.
    private static void Damage(TempFolder folder)
    {
        using var file = new FileStream(folder.Data.Database, FileMode.Open, FileAccess.ReadWrite);
        file.Position = file.Length / 2;
        file.Write(Enumerable.Repeat((byte)0x5A, 16_384).ToArray());
    }

    private static void Execute(string file, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={file};Pooling=false");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
