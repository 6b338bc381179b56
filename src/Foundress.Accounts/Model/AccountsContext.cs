using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Accounts.Model;

/// <summary>
/// The tables of accounts, the same for every database system. A derived context and its own migrations folder add what a
/// system needs. Times are whole milliseconds, which every system compares alike.
/// </summary>
/// <param name="options">The connection and the provider.</param>
public abstract class AccountsContext(DbContextOptions options) : IdentityUserContext<Person, Guid>(options), IDataProtectionKeyContext
{
    private const int GreatestName = 200;
    private const int HashLength = 64;

    /// <summary>The keys that session cookies are sealed with, so that a restart signs nobody out.</summary>
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    /// <summary>Who may do what where.</summary>
    internal DbSet<Membership> Memberships => Set<Membership>();

    /// <summary>One-time links.</summary>
    internal DbSet<OneTimeLink> Links => Set<OneTimeLink>();

    /// <summary>Enrolled devices, revoked ones too.</summary>
    internal DbSet<EnrolledDevice> Devices => Set<EnrolledDevice>();

    /// <summary>Secret addresses for calendar programs, revoked ones too.</summary>
    internal DbSet<CalendarLink> CalendarLinks => Set<CalendarLink>();

    /// <summary>Tries to sign in.</summary>
    internal DbSet<SignInRecord> SignIns => Set<SignInRecord>();

    /// <summary>Entries given for others.</summary>
    internal DbSet<PassedOnEntry> PassedOn => Set<PassedOnEntry>();

    /// <inheritdoc/>
    protected override void OnConfiguring(DbContextOptionsBuilder optionsBuilder) =>
        optionsBuilder.UseApplicationServiceProvider(ModelServices.Provider);

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.Entity<Membership>(table =>
        {
            table.ToTable("memberships");
            table.HasKey(m => new { m.PersonId, m.Operation });
            table.Property(m => m.Operation).HasMaxLength(GreatestName);
            table.Property(m => m.Role).HasConversion<string>().HasMaxLength(20);
            table.HasIndex(m => m.Operation);
            table.HasOne<Person>().WithMany().HasForeignKey(m => m.PersonId);
        });
        builder.Entity<OneTimeLink>(table =>
        {
            table.ToTable("links");
            table.Property(l => l.Id).ValueGeneratedNever();
            table.Property(l => l.Hash).HasMaxLength(HashLength);
            table.HasIndex(l => l.Hash).IsUnique();
            table.Property(l => l.Operation).HasMaxLength(GreatestName);
            table.Property(l => l.Role).HasConversion<string>().HasMaxLength(20);
            table.Property(l => l.ForName).HasMaxLength(GreatestName);
            table.HasIndex(l => l.Operation);
        });
        builder.Entity<EnrolledDevice>(table =>
        {
            table.ToTable("devices");
            table.Property(d => d.Id).ValueGeneratedNever();
            table.Property(d => d.Name).HasMaxLength(GreatestName);
            table.Property(d => d.Label).HasMaxLength(GreatestName);
            table.Property(d => d.Hash).HasMaxLength(HashLength);
            table.HasIndex(d => d.Hash).IsUnique();
            table.HasIndex(d => d.Name);
            table.HasOne<Person>().WithMany().HasForeignKey(d => d.PersonId);
        });
        builder.Entity<CalendarLink>(table =>
        {
            table.ToTable("calendar_links");
            table.Property(l => l.Id).ValueGeneratedNever();
            table.Property(l => l.Hash).HasMaxLength(HashLength);
            table.HasIndex(l => l.Hash).IsUnique();
            table.HasOne<Person>().WithMany().HasForeignKey(l => l.PersonId);
        });
        builder.Entity<SignInRecord>(table =>
        {
            table.ToTable("sign_ins");
            table.Property(s => s.Way).HasConversion<string>().HasMaxLength(20);
            table.Property(s => s.Result).HasConversion<string>().HasMaxLength(20);
            table.Property(s => s.Network).HasMaxLength(50);
            table.HasIndex(s => s.At);
        });
        builder.Entity<PassedOnEntry>(table =>
        {
            table.ToTable("passed_on");
            table.HasKey(p => new { p.Operation, p.EntryId });
            table.Property(p => p.Operation).HasMaxLength(GreatestName);
            table.Property(p => p.Device).HasMaxLength(GreatestName);
        });
    }
}
