using Foundress.Storage.Model;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Foundress.Storage.Postgres;

/// <summary>The book in a PostgreSQL database.</summary>
/// <param name="options">The connection and the provider.</param>
public sealed class PostgresBookContext(DbContextOptions<PostgresBookContext> options) : BookContext(options)
{
    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        base.OnModelCreating(modelBuilder);
        var text = new ValueConverter<string, string>(given => PostgresText.Encode(given), stored => PostgresText.Decode(stored));
        foreach (var property in modelBuilder.Entity<StoredEntry>().Metadata.GetProperties().Where(p => p.ClrType == typeof(string)))
        {
            // Without a greatest length: what the file takes must fit here too, and reading an entry sets the limits.
            property.SetColumnType("text");
            property.SetMaxLength(null);
            // By bytes, as SQLite does, and safe from changes of the system's rules of sorting, which would spoil the indexes.
            property.SetCollation("C");
            property.SetValueConverter(text);
        }

        modelBuilder.Entity<StoredBook>().Property<string?>("Place").HasColumnName("place").HasColumnType("text");
    }
}
