using Foundress.Storage.Backups;
using Foundress.Storage.Sqlite;
using Foundress.Storage.Transfer;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Storage.Postgres;

/// <summary>Puts a backup into a PostgreSQL database without entries: all of it in one transaction, or nothing.</summary>
internal static class PostgresRestore
{
    private const int Batch = 2_000;

    public static async Task<RestoreResult> RunAsync(
        DataFolder folder, PostgresAddress address, string backup, BookStoreOptions options, CancellationToken cancellation)
    {
        folder.Create();
        var next = folder.Database + "." + Path.GetRandomFileName() + ".restoring";
        try
        {
            BackupFile.Take(folder, Path.GetFullPath(backup), next);
            using var file = SqliteBookFile.Open(next);
            using var database = new PostgresDatabase(folder, address, options with { TakesOver = true });
            await database.PrepareAsync(new BackupFolder(folder, options.Time, database.Copy, options.Companion), cancellation);
            var restored = await database.GuardAsync(() => FillAsync(database, file, backup, cancellation));
            return new RestoreResult(restored.Count, restored.ToString(), null, false);
        }
        finally
        {
            File.Delete(next);
        }
    }

    private static async Task<EntryDigest> FillAsync(PostgresDatabase database, SqliteBookFile file, string backup, CancellationToken cancellation)
    {
        await using var context = database.Open();
        context.Database.SetCommandTimeout(0);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        // Others may read meanwhile but add only afterwards, which keeps the order of numbers the order of commit.
        await PostgresSql.ScalarAsync(
            context, "SET LOCAL synchronous_commit = on; SET LOCAL lock_timeout = '60s'; LOCK TABLE entries IN EXCLUSIVE MODE", cancellation);
        if (await context.Entries.AnyAsync(cancellation))
        {
            throw new StorageException(
                StorageFault.NotEmpty, database.Address.ToString(),
                $"The PostgreSQL database {database.Address} already holds entries. It was left as it is. Make an empty one and restore into that; then name it at the start: createdb --encoding UTF8 --template template0 --owner \"{database.Address.User}\" NAME");
        }

        var wanted = new EntryDigest();
        foreach (var rows in file.Rows().Chunk(Batch))
        {
            Array.ForEach(rows, wanted.Add);
            await PostgresInsert.AddAsync(context, rows, cancellation);
        }

        // Every device sends again what it holds: the backup may lack it.
        await PostgresIncarnation.RenewAsync(context, cancellation);
        var written = new EntryDigest();
        await foreach (var row in context.Entries.AsNoTracking().AsAsyncEnumerable().WithCancellation(cancellation))
            written.Add(row);
        if (written.Count != wanted.Count || written.ToString() != wanted.ToString())
        {
            throw new StorageException(
                StorageFault.BadBackup, backup,
                $"After restoring, the PostgreSQL database {database.Address} does not hold what {backup} holds. It was emptied again; nothing was changed.");
        }

        await transaction.CommitAsync(CancellationToken.None);
        return written;
    }
}
