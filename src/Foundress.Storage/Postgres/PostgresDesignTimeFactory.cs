using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Foundress.Storage.Postgres;

/// <summary>Lets the migrations tool build the model without a running program. It opens no database.</summary>
internal sealed class PostgresDesignTimeFactory : IDesignTimeDbContextFactory<PostgresBookContext>
{
    public PostgresBookContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<PostgresBookContext>().UseNpgsql("Host=localhost;Database=none").Options);
}
