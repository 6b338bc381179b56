using Foundress.Accounts.Moving;
using Foundress.Storage;

namespace Foundress.Cli.Running;

/// <summary>Where a book lies.</summary>
/// <param name="Directory">Its folder.</param>
/// <param name="Database">The PostgreSQL database that holds it, and then the folder only its backups; none for the file in the folder.</param>
internal readonly record struct BookPlace(string Directory, PostgresAddress? Database)
{
    internal BookStoreOptions Options(Surroundings around) => new()
    {
        Time = around.Time, Database = Database, Companion = new AccountsBackups(Directory, Database, around.Time),
    };
}
