using Foundress.Accounts.Model;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Accounts.Sqlite;

/// <summary>The accounts in a SQLite file.</summary>
/// <param name="options">The connection and the provider.</param>
public sealed class SqliteAccountsContext(DbContextOptions<SqliteAccountsContext> options) : AccountsContext(options);
