using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Foundress.Storage.Sqlite;

/// <summary>Lets the migrations tool build the model without a running program. It opens no database.</summary>
internal sealed class SqliteDesignTimeFactory : IDesignTimeDbContextFactory<SqliteBookContext>
{
    public SqliteBookContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteBookContext>().UseSqlite("Data Source=:memory:").Options);
}
