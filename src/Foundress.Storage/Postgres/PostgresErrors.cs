using System.Net.Sockets;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Foundress.Storage.Postgres;

/// <summary>PostgreSQL's error codes (appendix A of its manual) as messages for the keeper.</summary>
internal static class PostgresErrors
{
    // Deadlocks and the like resolve themselves when one of the two begins again.
    private const int Attempts = 4;

    /// <summary>Runs work on the database, turning what PostgreSQL says into what the keeper can use. The work may be run again.</summary>
    public static async Task<T> GuardAsync<T>(PostgresAddress address, Func<Task<T>> work)
    {
        for (var attempt = 1; ; attempt++)
        {
            try
            {
                return await work();
            }
            catch (Exception error) when (Cause(error) is { } cause)
            {
                if (attempt == Attempts || !MayPass(cause))
                    throw From(cause, address);
            }
        }
    }

    /// <summary>Runs work on the database once.</summary>
    public static T Guard<T>(PostgresAddress address, Func<T> work)
    {
        try
        {
            return work();
        }
        catch (Exception error) when (Cause(error) is { } cause)
        {
            throw From(cause, address);
        }
    }

    public static StorageException From(Exception error, PostgresAddress address) => error is PostgresException said
        ? FromState(said, address)
        : error.Message.Contains("password", StringComparison.OrdinalIgnoreCase)
            ? NotLetIn(address, error)
            : new StorageException(
                StorageFault.Unreachable, address.ToString(),
                $"The PostgreSQL database {address} cannot be reached: {Detail(error)} Everything acknowledged before is safe; what was just being added may be sent again without harm. Check that the server runs and that its name and port are right.",
                error);

    public static StorageException CannotWrite(PostgresAddress address, string why, Exception? inner = null) => new(
        StorageFault.ReadOnly, address.ToString(),
        $"The PostgreSQL database {address} cannot be written: {why}. Nothing was changed. Name the server that takes changes.", inner);

    public static StorageException NotABook(PostgresAddress address, string why) => new(
        StorageFault.NotABook, address.ToString(),
        $"The PostgreSQL database {address} cannot hold the book: {why}. It was left as it is. Give the book a database of its own: createdb --encoding UTF8 --template template0 --owner \"{address.User}\" NAME");

    public static StorageException Newer(PostgresAddress address, string migration) => new(
        StorageFault.Newer, address.ToString(),
        $"The PostgreSQL database {address} was written by a newer version of Foundress (it knows '{migration}', this one does not). It was left as it is. Start the newer version.");

    public static StorageException Missing(PostgresAddress address, DataFolder folder) => new(
        StorageFault.Missing, address.ToString(),
        $"The PostgreSQL database {address} is empty, although there is a book or a backup of one in {folder.Path}. Nothing was changed. To take the book of that folder along, run: foundress transfer. To take a backup, run: foundress restore FILE. Both need the same --database. To begin a new book there, choose another folder with --data.");

    public static StorageException Damaged(PostgresAddress address, string detail, Exception? inner = null) => new(
        StorageFault.Damaged, address.ToString(),
        $"The PostgreSQL database {address} is damaged ({detail}). Stop writing to it and have its server looked at; then restore a backup into an empty database: foundress restore FILE --database ...", inner);

    // The framework wraps what may pass in advice for programmers.
    private static Exception? Cause(Exception error)
    {
        for (var at = error; at is not null; at = at.InnerException)
        {
            if (at is StorageException or OperationCanceledException)
                return null;
            if (at is NpgsqlException or SocketException)
                return at;
            if (at is not (DbUpdateException or InvalidOperationException))
                return null;
        }

        return null;
    }

    // A connection that was kept ready may be broken by a restart of the server; a fresh one tells whether it is there again.
    private static bool MayPass(Exception error) => error switch
    {
        PostgresException said => said.SqlState is PostgresErrorCodes.DeadlockDetected or PostgresErrorCodes.SerializationFailure
            or PostgresErrorCodes.AdminShutdown or PostgresErrorCodes.CrashShutdown,
        NpgsqlException { InnerException: IOException } => true,
        _ => false,
    };

    private static StorageException FromState(PostgresException error, PostgresAddress address) => error.SqlState switch
    {
        [ '2', '8', .. ] => NotLetIn(address, error),
        PostgresErrorCodes.InvalidCatalogName => new StorageException(
            StorageFault.Missing, address.ToString(),
            $"There is no PostgreSQL database {address}. Make it first, on its server: createdb --encoding UTF8 --template template0 --owner \"{address.User}\" \"{address.Database}\"", error),
        PostgresErrorCodes.InsufficientPrivilege => new StorageException(
            StorageFault.Refused, address.ToString(),
            $"The user '{address.User}' may not do in the PostgreSQL database {address} what the book needs: {error.MessageText}. Make that user its owner: ALTER DATABASE \"{address.Database}\" OWNER TO \"{address.User}\"", error),
        PostgresErrorCodes.DiskFull => new StorageException(
            StorageFault.DiskFull, address.ToString(),
            $"There is no room left on the disk of the PostgreSQL database {address}. What was being added was not kept; everything acknowledged before is safe. Free some space there and try again.", error),
        PostgresErrorCodes.ReadOnlySqlTransaction => CannotWrite(address, "it takes no changes", error),
        PostgresErrorCodes.LockNotAvailable or PostgresErrorCodes.DeadlockDetected or PostgresErrorCodes.SerializationFailure => new StorageException(
            StorageFault.InUse, address.ToString(),
            $"The PostgreSQL database {address} is held by another program that is writing. Nothing was changed. Wait until it is done and try again.", error),
        PostgresErrorCodes.TooManyConnections or PostgresErrorCodes.OutOfMemory or PostgresErrorCodes.QueryCanceled => new StorageException(
            StorageFault.InUse, address.ToString(),
            $"The server of the PostgreSQL database {address} has too much to do ({error.MessageText}). Nothing was changed. Try again in a while.", error),
        PostgresErrorCodes.AdminShutdown or PostgresErrorCodes.CrashShutdown or PostgresErrorCodes.CannotConnectNow or [ '0', '8', .. ] => new StorageException(
            StorageFault.Unreachable, address.ToString(),
            $"The server of the PostgreSQL database {address} is stopping or starting ({error.MessageText}). Everything acknowledged before is safe; what was just being added may be sent again without harm. Try again in a while.", error),
        PostgresErrorCodes.DataCorrupted or PostgresErrorCodes.IndexCorrupted => Damaged(address, error.MessageText, error),
        PostgresErrorCodes.UndefinedTable or PostgresErrorCodes.UndefinedColumn => Damaged(address, "a table of the book is missing or was changed", error),
        _ => new StorageException(
            StorageFault.Disk, address.ToString(),
            $"The PostgreSQL database {address} refused to read or write: {error.MessageText} ({error.SqlState}). What was being added was not kept; try again.", error),
    };

    private static StorageException NotLetIn(PostgresAddress address, Exception error) => new(
        StorageFault.Refused, address.ToString(),
        $"The PostgreSQL database {address} does not let the user '{address.User}' in. Check the user and the password: in the setting, or in a password file named with Passfile=.",
        error);

    private static string Detail(Exception error)
    {
        var text = (error.InnerException ?? error).Message;
        return text.EndsWith('.') ? text : text + ".";
    }
}
