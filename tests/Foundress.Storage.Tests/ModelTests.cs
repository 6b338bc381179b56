using Foundress.Storage.Postgres;
using Foundress.Storage.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Storage.Tests;

public class ModelTests
{
    [Fact]
    public void Model_ComparedWithMigrations_HasNothingPending()
    {
        using var context = new SqliteDesignTimeFactory().CreateDbContext([]);
        Assert.False(context.Database.HasPendingModelChanges(), "Add a migration: dotnet ef migrations add NAME (see docs/storage.md).");
    }

    [Fact]
    public void PostgresModel_ComparedWithMigrations_HasNothingPending()
    {
        using var context = new PostgresDesignTimeFactory().CreateDbContext([]);
        Assert.False(context.Database.HasPendingModelChanges(), "Add a migration: dotnet ef migrations add NAME (see docs/storage.md).");
    }

    [Fact]
    public void Migrations_OfTheFile_HaveTheirTwinsInPostgres()
    {
        using var file = new SqliteDesignTimeFactory().CreateDbContext([]);
        using var server = new PostgresDesignTimeFactory().CreateDbContext([]);
        static string[] Names(DbContext context) => [.. context.Database.GetMigrations().Select(id => id[(id.IndexOf('_', StringComparison.Ordinal) + 1)..])];
        // PostgreSQL has tables of its own besides, for work that several servers share.
        Assert.Equal(Names(file), Names(server).Intersect(Names(file)));
    }
}
