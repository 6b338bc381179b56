using Foundress.Storage.Model;
using Foundress.Storage.Work;
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

        modelBuilder.Entity<StoredWork>(work =>
        {
            work.ToTable("work");
            work.HasKey(w => w.Number);
            work.Property(w => w.Number).HasColumnName("number").ValueGeneratedOnAdd();
            work.Property(w => w.Operation).HasColumnName("operation").UseCollation("C");
            work.Property(w => w.Apiary).HasColumnName("apiary");
            work.Property(w => w.InputHash).HasColumnName("input_hash").UseCollation("C");
            work.Property(w => w.ModelVersion).HasColumnName("model_version").UseCollation("C");
            work.Property(w => w.Input).HasColumnName("input");
            work.Property(w => w.State).HasColumnName("state").UseCollation("C");
            work.Property(w => w.Attempts).HasColumnName("attempts");
            work.Property(w => w.Lease).HasColumnName("lease");
            work.Property(w => w.LeasedUntil).HasColumnName("leased_until");
            work.Property(w => w.Worker).HasColumnName("worker");
            work.Property(w => w.Result).HasColumnName("result");
            work.Property(w => w.Trouble).HasColumnName("trouble");
            work.Property(w => w.EndedAt).HasColumnName("ended_at");
            work.HasIndex(w => new { w.Operation, w.Apiary, w.InputHash, w.ModelVersion }).IsUnique().HasDatabaseName("work_key");
            // What can be taken, however much has been done.
            work.HasIndex(w => w.Number).HasFilter("state IN ('waiting', 'leased')").HasDatabaseName("work_open");
        });
        modelBuilder.Entity<StoredBook>().Property<string?>("Place").HasColumnName("place").HasColumnType("text");
    }
}
