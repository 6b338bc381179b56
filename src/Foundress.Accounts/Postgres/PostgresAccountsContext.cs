using Foundress.Accounts.Model;
using Foundress.Storage.Postgres;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Foundress.Accounts.Postgres;

/// <summary>The accounts in a PostgreSQL database, in a schema of their own beside the tables of the book.</summary>
/// <param name="options">The connection and the provider.</param>
public sealed class PostgresAccountsContext(DbContextOptions<PostgresAccountsContext> options) : AccountsContext(options)
{
    /// <summary>The schema: the book can be dumped without it.</summary>
    public const string Schema = "foundress_accounts";

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.HasDefaultSchema(Schema);
        var text = new ValueConverter<string, string>(given => PostgresText.Encode(given), stored => PostgresText.Decode(stored));
        foreach (var property in builder.Model.GetEntityTypes().Where(table => !table.IsMappedToJson()).SelectMany(table => table.GetProperties()))
        {
            if (property.ClrType != typeof(string) || property.GetValueConverter() is not null)
                continue;
            // As in the book: without a greatest length, by bytes, and with every character that a name may have.
            property.SetColumnType("text");
            property.SetMaxLength(null);
            property.SetCollation("C");
            property.SetValueConverter(text);
        }
    }
}
