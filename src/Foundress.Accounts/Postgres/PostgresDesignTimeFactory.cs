using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Foundress.Accounts.Postgres;

/// <summary>Lets the migrations tool build the model without a running program. It opens no database.</summary>
internal sealed class PostgresDesignTimeFactory : IDesignTimeDbContextFactory<PostgresAccountsContext>
{
    public PostgresAccountsContext CreateDbContext(string[] args) =>
        new(PostgresAccounts.Options(new DbContextOptionsBuilder<PostgresAccountsContext>(), "Host=localhost;Database=none"));
}
