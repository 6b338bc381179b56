using Foundress.Book.Journal;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Storage.Model;

/// <summary>
/// The tables of the book, the same for every database system. A derived context and its own migrations folder add what a
/// system needs (see <see cref="Sqlite.SqliteBookContext"/>).
/// </summary>
/// <param name="options">The connection and the provider.</param>
public abstract class BookContext(DbContextOptions options) : DbContext(options)
{
    private const int GreatestName = 200;

    internal DbSet<StoredEntry> Entries => Set<StoredEntry>();

    internal DbSet<StoredBook> Books => Set<StoredBook>();

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<StoredEntry>(entry =>
        {
            entry.ToTable("entries");
            entry.HasKey(e => e.Sequence);
            entry.Property(e => e.Sequence).HasColumnName("sequence").ValueGeneratedOnAdd();
            entry.Property(e => e.Operation).HasColumnName("operation").HasMaxLength(GreatestName);
            entry.Property(e => e.Id).HasColumnName("id");
            entry.Property(e => e.Author).HasColumnName("author").HasMaxLength(GreatestName);
            entry.Property(e => e.Device).HasColumnName("device").HasMaxLength(GreatestName);
            entry.Property(e => e.Clock).HasColumnName("clock").HasMaxLength(17);
            entry.Property(e => e.Kind).HasColumnName("kind").HasMaxLength(GreatestName);
            entry.Property(e => e.Schema).HasColumnName("schema");
            entry.Property(e => e.Payload).HasColumnName("payload").HasMaxLength(EntryJson.GreatestPayload);
            entry.Property(e => e.ReceivedAt).HasColumnName("received_at");
            // The union by id.
            entry.HasIndex(e => new { e.Operation, e.Id }).IsUnique().HasDatabaseName("entries_operation_id");
            // Reading on from a cursor.
            entry.HasIndex(e => new { e.Operation, e.Sequence }).HasDatabaseName("entries_operation_sequence");
        });
        modelBuilder.Entity<StoredBook>(book =>
        {
            book.ToTable("book");
            book.HasKey(b => b.Key);
            book.Property(b => b.Key).HasColumnName("key").ValueGeneratedNever();
            book.Property(b => b.Incarnation).HasColumnName("incarnation");
        });
    }
}
