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
                        "The file of accounts is full, held by another program or damaged. Nothing that was acknowledged is lost. Try again; if it stays so, look at the server's disk.", error);
                case PostgresException { SqlState: PostgresErrorCodes.DiskFull }:
                    return new AccountsException(
                        AccountsFault.NoRoom, "There is no room left where the accounts lie. Nothing that was acknowledged is lost. Free some space there and try again.", error);
                case NpgsqlException or SocketException:
                    return new AccountsException(
                        AccountsFault.Store, "The database that holds the accounts cannot be reached, or has too much to do. Nothing that was acknowledged is lost. Try again; if it stays so, look at its server.", error);
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
