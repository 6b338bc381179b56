using Foundress.Accounts.Model;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Accounts;

/// <summary>Enrolled devices: each has a secret of its own, and can be taken off alone.</summary>
/// <param name="database">The accounts.</param>
public sealed class Devices(AccountsDatabase database)
{
    /// <summary>A device that was not used for so long is no longer let in: more than a winter.</summary>
    public static readonly TimeSpan Idle = TimeSpan.FromDays(365);

    private static readonly TimeSpan SeenEvery = TimeSpan.FromHours(1);

    /// <summary>Enrols a device. One that is enrolled already gets a new secret; the old one no longer works.</summary>
    /// <param name="person">Whose it is.</param>
    /// <param name="name">The name it has in the entries written on it.</param>
    /// <param name="label">What the person calls it.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The secret, told this once.</returns>
    /// <exception cref="AccountsException">The name is bound to somebody else.</exception>
    public async Task<string> EnrolAsync(Guid person, string name, string label, CancellationToken cancellation = default)
    {
        CheckName(name);
        label = label.Trim() is { Length: > 0 } given ? given[..Math.Min(given.Length, PersonNames.GreatestLength)] : AccountsTexts.ADevice;
        await using var context = database.Open();
        await using var transaction = await database.BeginAloneAsync(context, cancellation);
        if (await context.Devices.AnyAsync(d => d.Name == name && d.PersonId != person, cancellation))
            throw Taken();
        var now = database.Now;
        await context.Devices.Where(d => d.Name == name && d.RevokedAt == null).ExecuteUpdateAsync(set => set.SetProperty(d => d.RevokedAt, now), cancellation);
        var secret = Secrets.New();
        context.Devices.Add(new EnrolledDevice
        {
            Id = Guid.CreateVersion7(database.Time.GetUtcNow()),
            PersonId = person,
            Name = name,
            Label = label,
            Hash = Secrets.Hash(secret),
            EnrolledAt = now,
            SeenAt = now,
        });
        await context.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(CancellationToken.None);
        return secret;
    }

    /// <summary>Looks whether a device could be enrolled for somebody.</summary>
    /// <param name="context">Where it is looked up, within what else is done there.</param>
    /// <param name="name">The name it has in the entries written on it.</param>
    /// <param name="person">Whose it would be.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="AccountsException">It cannot: the name is no name, or is bound to somebody else.</exception>
    public static async Task CheckAsync(AccountsContext context, string name, Guid person, CancellationToken cancellation = default)
    {
        CheckName(name);
        if (await context.Devices.AnyAsync(d => d.Name == name && d.PersonId != person, cancellation))
            throw Taken();
    }

    private static void CheckName(string name)
    {
        if (name.Length is 0 or > 200 || string.IsNullOrWhiteSpace(name))
            throw new AccountsException(AccountsFault.Value, AccountsTexts.DeviceName);
    }

    private static AccountsException Taken() => new(
        AccountsFault.Conflict, AccountsTexts.DeviceTaken);

    /// <summary>The device a secret belongs to, if it is let in.</summary>
    public async Task<EnrolledDevice?> FindAsync(string secret, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        var hash = Secrets.Hash(secret);
        var device = await context.Devices.AsNoTracking().SingleOrDefaultAsync(d => d.Hash == hash, cancellation);
        if (device is null)
            return null;
        var (now, due) = (database.Now, database.Now - (long)SeenEvery.TotalMilliseconds);
        if (device.RevokedAt is not null || device.SeenAt < now - (long)Idle.TotalMilliseconds)
        {
            if (device.RefusedAt is null || device.RefusedAt < due)
                await context.Devices.Where(d => d.Id == device.Id).ExecuteUpdateAsync(set => set.SetProperty(d => d.RefusedAt, now), cancellation);
            return null;
        }

        if (device.SeenAt < due)
            await context.Devices.Where(d => d.Id == device.Id).ExecuteUpdateAsync(set => set.SetProperty(d => d.SeenAt, now), cancellation);
        return device;
    }

    /// <summary>Whether a name in entries is bound to somebody.</summary>
    public async Task<bool> IsBoundToAsync(string name, Guid person, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        return await context.Devices.AnyAsync(d => d.Name == name && d.PersonId == person, cancellation);
    }

    /// <summary>The names in entries that are bound to a person, of devices taken off too.</summary>
    public async Task<IReadOnlySet<string>> NamesOfAsync(Guid person, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        return await context.Devices.Where(d => d.PersonId == person).Select(d => d.Name).ToHashSetAsync(StringComparer.Ordinal, cancellation);
    }

    /// <summary>The devices of people that are not taken off, by person and newest first.</summary>
    public async Task<ILookup<Guid, EnrolledDevice>> OfAsync(IReadOnlyCollection<Guid> people, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        var rows = await context.Devices.AsNoTracking().Where(d => people.Contains(d.PersonId) && d.RevokedAt == null)
            .OrderByDescending(d => d.EnrolledAt).ToListAsync(cancellation);
        return rows.ToLookup(d => d.PersonId);
    }

    /// <summary>Takes a device of a person off. What it holds stays on it.</summary>
    /// <exception cref="AccountsException">The person has no such device.</exception>
    public async Task RevokeAsync(Guid person, Guid device, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        await using var transaction = await database.BeginAloneAsync(context, cancellation);
        var now = database.Now;
        if (await context.Devices.Where(d => d.Id == device && d.PersonId == person && d.RevokedAt == null).ExecuteUpdateAsync(set => set.SetProperty(d => d.RevokedAt, now), cancellation) == 0)
            throw new AccountsException(AccountsFault.Gone, AccountsTexts.NoSuchDevice);
        await transaction.CommitAsync(CancellationToken.None);
    }

    /// <summary>Takes all devices of a person off, within what else a context does.</summary>
    /// <param name="context">Where the change is made.</param>
    /// <param name="person">The person.</param>
    /// <param name="cancellation">Gives up.</param>
    public Task RevokeAllAsync(AccountsContext context, Guid person, CancellationToken cancellation = default)
    {
        var now = database.Now;
        return context.Devices.Where(d => d.PersonId == person && d.RevokedAt == null).ExecuteUpdateAsync(set => set.SetProperty(d => d.RevokedAt, now), cancellation);
    }
}
