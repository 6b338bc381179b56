using Foundress.Storage.Postgres;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Storage.Tests;

public class PostgresUpdateTests
{
    [Fact]
    public async Task Open_BookOfAnOlderVersion_IsBackedUpBeforeItsTablesChange()
    {
        await using var book = await TestBook.MakeAsync(DatabaseKind.Postgres, prepared: false);
        await using (var older = new PostgresBookContext(new DbContextOptionsBuilder<PostgresBookContext>().UseNpgsql(book.Database!.Connection).Options))
            await older.Database.MigrateAsync("Initial");
        using (var first = new PostgresDatabase(book.Folder.Data, book.Database, new BookStoreOptions()))
        {
            await using var context = first.Open();
            await using var transaction = await context.Database.BeginTransactionAsync();
            await first.AddNewAsync(context, [.. Some.Entries(3).Select(entry => Model.EntryRows.ToRow(entry, DateTimeOffset.UnixEpoch))], default);
            await transaction.CommitAsync();
        }

        using var store = await book.OpenAsync(new BookStoreOptions { BackupAtStart = false });
        Assert.Equal(Some.Entries(3), await Some.AllAsync(store));
        Assert.Empty(await store.Work!.CountAsync());
        var backup = Assert.Single(store.Backups());
        Assert.Equal("before-update", backup.Reason);
        using var elsewhere = new TempFolder();
        Assert.Equal(3, (await BookStore.RestoreAsync(elsewhere.Path, backup.File)).Entries);
    }
}
