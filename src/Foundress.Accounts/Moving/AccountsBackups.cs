using Foundress.Accounts.Postgres;
using Foundress.Accounts.Sqlite;
using Foundress.Storage;
using Foundress.Storage.Backups;
using Foundress.Storage.Postgres;
using Foundress.Storage.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Accounts.Moving;

/// <summary>
/// Copies the accounts with every backup of the book, as of one moment and while they are in use: a SQLite file beside the
/// backup, of either system, which only its owner can read. A file of its own, so that a backup of the book can be handed on.
/// </summary>
/// <param name="directory">The data folder.</param>
/// <param name="database">The PostgreSQL database that holds book and accounts; none for the files of the folder.</param>
/// <param name="time">The clock.</param>
public sealed class AccountsBackups(string directory, PostgresAddress? database, TimeProvider time) : IBackupCompanion
{
    /// <inheritdoc/>
    public bool Copy(string target)
    {
        try
        {
            if (database is null)
                return CopyFile(target);
            // Backups are made on a thread of their own, which may wait.
            return Task.Run(() => CopyDatabaseAsync(database, target)).GetAwaiter().GetResult();
        }
        catch (Exception error)
        {
            // Half a copy holds the hashes of passwords as well: whatever went wrong, none is left behind.
            File.Delete(target);
            File.Delete(target + "-journal");
            if (error is not (SqliteException or DbUpdateException or AccountsException))
                throw;
            throw new StorageException(
                AccountsTrouble.Of(error) is { Fault: AccountsFault.NoRoom } ? StorageFault.DiskFull : StorageFault.Disk, target,
                MovingTexts.FormatNotCopied(error.Message), error);
        }
    }

    private bool CopyFile(string target)
    {
        if (!AccountsDatabase.IsIn(directory))
            return false;
        SqliteAccountsFile.Copy(AccountsDatabase.FileOf(directory), target);
        return true;
    }

    private async Task<bool> CopyDatabaseAsync(PostgresAddress address, string target)
    {
        if (!await PostgresAccounts.AreInAsync(address, CancellationToken.None))
            return false;
        using var accounts = await AccountsDatabase.OpenAsync(new PostgresAccounts(address), time, CancellationToken.None);
        await PostgresErrors.GuardAsync(address, async () =>
        {
            File.Delete(target);
            SecretFile.Make(target);
            await using var from = accounts.Open();
            await using var reading = await from.Database.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead);
            await using var to = SqliteAccountsFile.Context(target);
            await to.Database.MigrateAsync();
            await using var writing = await to.Database.BeginTransactionAsync();
            var tables = await AccountsCopy.RunAsync(from, to, CancellationToken.None);
            if (tables.FirstOrDefault(table => !table.IsSame) is { } different)
                throw new AccountsException(AccountsFault.Store, MovingTexts.FormatWrittenOtherwise(different.Rows, different.Table, different.RowsThere));
            await writing.CommitAsync();
            return true;
        });
        SqliteCopy.Flush(target);
        SqliteAccountsFile.Check(target);
        return true;
    }
}
