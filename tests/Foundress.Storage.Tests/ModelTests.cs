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
}
