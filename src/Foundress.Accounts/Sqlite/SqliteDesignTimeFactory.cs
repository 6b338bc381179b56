using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Foundress.Accounts.Sqlite;

/// <summary>Lets the migrations tool build the model without a running program. It opens no database.</summary>
internal sealed class SqliteDesignTimeFactory : IDesignTimeDbContextFactory<SqliteAccountsContext>
{
    public SqliteAccountsContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteAccountsContext>().UseSqlite("Data Source=:memory:").Options);
}
