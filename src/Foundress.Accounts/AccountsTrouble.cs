using System.Net.Sockets;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Foundress.Accounts;

/// <summary>What database systems say of accounts, in words for people.</summary>
public static class AccountsTrouble
{
    // sqlite.org/rescode.html
    private const int FullFile = 13;

    /// <summary>Does something with the accounts.</summary>
    /// <exception cref="AccountsException">The database refused, in words for people.</exception>
    public static async Task TellAsync(Func<Task> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        try
        {
            await work();
        }
        catch (Exception error) when (Of(error) is { } trouble)
        {
            throw trouble;
        }
    }

    /// <summary>What went wrong; null when it is no trouble of a database.</summary>
    public static AccountsException? Of(Exception error)
    {
        for (Exception? at = error; at is not null; at = at.InnerException)
        {
            switch (at)
            {
                case SqliteException said:
                    return new AccountsException(
                        said.SqliteErrorCode == FullFile ? AccountsFault.NoRoom : AccountsFault.Store,
                        AccountsTexts.FileTrouble, error);
                case PostgresException { SqlState: PostgresErrorCodes.DiskFull }:
                    return new AccountsException(
                        AccountsFault.NoRoom, AccountsTexts.NoRoom, error);
                case NpgsqlException or SocketException:
                    return new AccountsException(
                        AccountsFault.Store, AccountsTexts.DatabaseTrouble, error);
                // The framework wraps what may pass in advice for programmers.
                case DbUpdateException or InvalidOperationException:
                    continue;
                default:
                    return null;
            }
        }

        return null;
    }
}
