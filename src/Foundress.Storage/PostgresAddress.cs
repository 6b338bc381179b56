using Npgsql;

namespace Foundress.Storage;

/// <summary>
/// Which PostgreSQL database holds the book, and how to get in. Its text for people names the server and the database but
/// never the password, wherever it may be printed.
/// </summary>
public sealed class PostgresAddress
{
    /// <summary>How the setting is written.</summary>
    public const string Example = "Host=db.example;Database=foundress;Username=keeper";

    private PostgresAddress(NpgsqlConnectionStringBuilder parts)
    {
        Database = parts.Database!;
        User = parts.Username is { Length: > 0 } user ? user : Environment.UserName;
        Server = parts.Host!.Contains('/', StringComparison.Ordinal) || parts.Host.Contains(',', StringComparison.Ordinal)
            ? parts.Host
            : FormattableString.Invariant($"{parts.Host}:{parts.Port}");
        // What was recorded must not come back in error messages, nor the password in a connection's description.
        parts.IncludeErrorDetail = false;
        parts.PersistSecurityInfo = false;
        parts.ApplicationName ??= "Foundress";
        // Transactions of a surrounding scope would put off the commit that an acknowledgement promises.
        parts.Enlist = false;
        Connection = parts.ConnectionString;
        parts.Pooling = false;
        Alone = parts.ConnectionString;
    }

    /// <summary>The database's name.</summary>
    public string Database { get; }

    /// <summary>The server: host and port.</summary>
    public string Server { get; }

    /// <summary>The user it is entered as.</summary>
    public string User { get; }

    /// <summary>The connection, password included. Not for print.</summary>
    internal string Connection { get; }

    /// <summary>The same for a connection that is really closed when it is closed, and lets go of its locks then.</summary>
    internal string Alone { get; }

    /// <summary>Reads the setting: <c>Host=…;Database=…;Username=…</c>, with <c>Port</c>, <c>Password</c>, <c>Passfile</c> and the others of Npgsql where they are needed.</summary>
    /// <param name="text">The setting.</param>
    /// <param name="problem">What is wrong with it and what to do, without repeating it; null on success.</param>
    /// <returns>The address, or null.</returns>
    public static PostgresAddress? TryParse(string text, out string? problem)
    {
        NpgsqlConnectionStringBuilder parts;
        try
        {
            parts = new NpgsqlConnectionStringBuilder(text);
        }
        catch (Exception error) when (error is ArgumentException or FormatException or OverflowException or NotSupportedException or InvalidCastException)
        {
            // Neither the setting nor what was said of it is repeated: either may hold the password.
            problem = $"the setting cannot be read. Write names and values as in '{Example}'; a value with a semicolon goes in single quotes.";
            return null;
        }

        var missing = string.IsNullOrWhiteSpace(parts.Host) ? "Host" : string.IsNullOrWhiteSpace(parts.Database) ? "Database" : null;
        problem = missing is null ? null : $"'{missing}' is missing. Write the setting as in '{Example}'.";
        return missing is null ? new PostgresAddress(parts) : null;
    }

    /// <summary>The database and its server, without user and password.</summary>
    public override string ToString() => $"'{Database}' on {Server}";
}
