using System.Globalization;
using Foundress.Accounts.Model;
using Foundress.Accounts.Postgres;
using Foundress.Accounts.Sqlite;
using Foundress.Storage;
using Foundress.Storage.Backups;
using Foundress.Storage.Postgres;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Accounts.Moving;

/// <summary>
/// Accounts that lie beside a backup, put in their place again. They are checked on a copy before anything is touched, and all
/// sign-ins and open links that they hold are ended: some of those links may have been used since.
/// </summary>
public sealed class AccountsRestore : IDisposable
{
    private readonly DataFolder _folder;
    private readonly PostgresAddress? _database;
    private readonly TimeProvider _time;
    private readonly string _next;
    private int _people;

    private AccountsRestore(DataFolder folder, PostgresAddress? database, TimeProvider time)
    {
        (_folder, _database, _time) = (folder, database, time);
        _next = AccountsDatabase.FileOf(folder.Path) + ".restoring";
    }

    /// <summary>Takes and checks the accounts that lie beside a backup.</summary>
    /// <param name="backup">The backup of the book. Both files are only read.</param>
    /// <param name="directory">The data folder to restore into.</param>
    /// <param name="database">The PostgreSQL database to restore into; none for the files of the folder.</param>
    /// <param name="time">The clock.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>Null when no accounts lie beside it.</returns>
    /// <exception cref="StorageException">They cannot be restored; nothing has been changed.</exception>
    public static async Task<AccountsRestore?> TakeAsync(string backup, string directory, PostgresAddress? database, TimeProvider time, CancellationToken cancellation = default)
    {
        var file = Path.GetFullPath(backup) + BackupFolder.OfAccounts;
        if (!File.Exists(file))
            return null;
        var restore = new AccountsRestore(DataFolder.At(directory), database, time);
        try
        {
            restore._folder.Create();
            await restore.TakeAsync(file, cancellation);
            return restore;
        }
        catch
        {
            restore.Dispose();
            throw;
        }
    }

    /// <summary>Puts them in their place.</summary>
    /// <param name="bookKept">Where the book as it was before has been kept; null when there was none.</param>
    /// <param name="cancellation">Gives up before anything is changed.</param>
    /// <exception cref="StorageException">They are in use; nothing has been changed.</exception>
    public async Task<RestoredAccounts> PutAsync(string? bookKept, CancellationToken cancellation = default)
    {
        if (_database is not null)
        {
            await PutIntoDatabaseAsync(_database, cancellation);
            return new RestoredAccounts(_people, null);
        }

        using var alone = FolderLock.TryAlone(_folder.OpenLock) ?? throw InUse();
        var kept = Keep(bookKept);
        File.Move(_next, AccountsDatabase.FileOf(_folder.Path), overwrite: true);
        return new RestoredAccounts(_people, kept);
    }

    /// <summary>Removes the checked copy.</summary>
    public void Dispose()
    {
        foreach (var part in (string[])["", "-journal", "-wal", "-shm"])
            File.Delete(_next + part);
    }

    private async Task TakeAsync(string file, CancellationToken cancellation)
    {
        try
        {
            Dispose();
            SqliteAccountsFile.Copy(file, _next);
            await using var context = SqliteAccountsFile.Context(_next);
            var known = context.Database.GetMigrations().ToHashSet(StringComparer.Ordinal);
            var present = (await context.Database.GetAppliedMigrationsAsync(cancellation)).ToList();
            if (present.Count == 0)
                throw Bad(file, MovingTexts.HoldsNone);
            if (!present.TrueForAll(known.Contains))
                throw Bad(file, MovingTexts.MadeByNewer);
            await context.Database.MigrateAsync(cancellation);
            await EndWhatWasOpenAsync(context, cancellation);
            _people = await context.Users.CountAsync(cancellation);
        }
        catch (SqliteException error)
        {
            throw Bad(file, MovingTexts.FormatNotRead(_next, error.Message), error);
        }

        if (_database is not null && await PostgresAccounts.AreInAsync(_database, cancellation))
        {
            using var there = await AccountsDatabase.OpenAsync(new PostgresAccounts(_database), _time, cancellation);
            if (await new Members(there).AnyAsync(cancellation))
                throw NotEmpty(_database);
        }
    }

    private async Task EndWhatWasOpenAsync(AccountsContext context, CancellationToken cancellation)
    {
        var now = _time.GetUtcNow().ToUnixTimeMilliseconds();
        await context.Links.Where(l => l.UsedAt == null && l.WithdrawnAt == null).ExecuteUpdateAsync(set => set.SetProperty(l => l.WithdrawnAt, now), cancellation);
        // One that was taken off since, because it had got about, must not be read again.
        await context.CalendarLinks.Where(l => l.RevokedAt == null).ExecuteUpdateAsync(set => set.SetProperty(l => l.RevokedAt, now), cancellation);
        foreach (var person in await context.Users.ToListAsync(cancellation))
            person.SecurityStamp = Secrets.New();
        await context.SaveChangesAsync(cancellation);
    }

    private async Task PutIntoDatabaseAsync(PostgresAddress address, CancellationToken cancellation)
    {
        using var target = await AccountsDatabase.OpenAsync(new PostgresAccounts(address), _time, cancellation);
        await PostgresErrors.GuardAsync(address, async () =>
        {
            await using var from = SqliteAccountsFile.Context(_next);
            await using var to = target.Open();
            await using var writing = await target.BeginAloneAsync(to, cancellation);
            if (await to.Users.AnyAsync(cancellation))
                throw NotEmpty(address);
            var tables = await AccountsCopy.RunAsync(from, to, cancellation);
            if (tables.FirstOrDefault(table => !table.IsSame) is { } different)
            {
                throw new StorageException(
                    StorageFault.BadBackup, address.ToString(),
                    MovingTexts.FormatCameBackOtherwise(different.Rows, different.Table, different.RowsThere, address));
            }

            await writing.CommitAsync(CancellationToken.None);
            return true;
        });
    }

    // Beside the book as it was, where a restore of that brings them back too.
    private string? Keep(string? bookKept)
    {
        var file = AccountsDatabase.FileOf(_folder.Path);
        if (!File.Exists(file))
            return null;
        var target = bookKept is null
            ? Path.Combine(_folder.Backups, "accounts-" + _time.GetUtcNow().ToString("yyyyMMdd-HHmmss'Z'", CultureInfo.InvariantCulture) + "-before-restore.db")
            : bookKept + BackupFolder.OfAccounts;
        try
        {
            if (!SqliteAccountsFile.TrySettle(file))
                throw InUse();
        }
        catch (SqliteException)
        {
            // Damaged: kept as it stands, byte for byte, with its log.
        }

        Directory.CreateDirectory(_folder.Backups);
        foreach (var part in (string[])["-wal", "-shm"])
        {
            if (File.Exists(file + part))
                File.Move(file + part, target + part, overwrite: true);
        }

        // Copied, not moved: without accounts a server started now would be open to everybody at this computer.
        if (!File.Exists(target))
            File.Copy(file, target);
        return target;
    }

    private StorageException InUse() => new(
        StorageFault.InUse, _folder.Path,
        MovingTexts.FormatInUse(_folder.Path));

    private static StorageException NotEmpty(PostgresAddress address) => new(
        StorageFault.NotEmpty, address.ToString(),
        MovingTexts.FormatNotEmpty(address));

    private static StorageException Bad(string file, string why, Exception? inner = null) => new(
        StorageFault.BadBackup, file, MovingTexts.FormatCannotRestore(file, why), inner);
}
