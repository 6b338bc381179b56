using Foundress.Accounts.Postgres;
using Foundress.Accounts.Sqlite;
using Foundress.Storage;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Accounts.Moving;

/// <summary>
/// Copies the accounts of a data folder into the PostgreSQL database of the book: all of them in one transaction, or nothing.
/// The file is only read.
/// </summary>
public static class AccountsTransfer
{
    /// <summary>Copies, reads back and compares.</summary>
    /// <param name="directory">The data folder, which no server may use meanwhile.</param>
    /// <param name="database">Where to.</param>
    /// <param name="time">The clock.</param>
    /// <param name="cancellation">Gives up; nothing was copied then.</param>
    /// <returns>What was done; null when the folder has no accounts.</returns>
    /// <exception cref="AccountsException">The file cannot be used, or something did not arrive.</exception>
    /// <exception cref="StorageException">The database cannot be used.</exception>
    public static async Task<TransferredAccounts?> RunAsync(string directory, PostgresAddress database, TimeProvider time, CancellationToken cancellation = default)
    {
        if (!AccountsDatabase.IsIn(directory))
            return null;
        using var source = await AccountsDatabase.OpenAsync(new SqliteAccounts(AccountsDatabase.FileOf(directory), time), time, cancellation);
        using var target = await AccountsDatabase.OpenAsync(new PostgresAccounts(database), time, cancellation);
        return await FillAsync(source, target, cancellation);
    }

    private static async Task<TransferredAccounts> FillAsync(AccountsDatabase source, AccountsDatabase target, CancellationToken cancellation)
    {
        await using var from = source.Open();
        await using var to = target.Open();
        // Held, so that nobody joins on the one side while the other is being filled.
        await using var reading = await source.BeginAloneAsync(from, cancellation);
        await using var writing = await target.BeginAloneAsync(to, cancellation);
        if (await to.Users.AnyAsync(cancellation))
            return new TransferredAccounts(true, []);
        var tables = await AccountsCopy.RunAsync(from, to, cancellation);
        if (tables.FirstOrDefault(table => !table.IsSame) is { } different)
        {
            throw new AccountsException(
                AccountsFault.Store, MovingTexts.FormatMovedOtherwise(different.Rows, different.Table, different.RowsThere, target.Place, source.Place));
        }

        await writing.CommitAsync(CancellationToken.None);
        return new TransferredAccounts(false, tables);
    }
}
