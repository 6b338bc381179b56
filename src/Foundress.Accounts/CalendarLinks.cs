using Foundress.Accounts.Model;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Accounts;

/// <summary>Secret addresses for calendar programs: one a person at most, read-only, made anew or taken off at any time.</summary>
/// <param name="database">The accounts.</param>
public sealed class CalendarLinks(AccountsDatabase database)
{
    private static readonly TimeSpan SeenEvery = TimeSpan.FromHours(1);

    /// <summary>Makes somebody's link. The one they had no longer works.</summary>
    /// <returns>The secret, told this once.</returns>
    public async Task<string> MakeAsync(Guid person, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        await using var transaction = await database.BeginAloneAsync(context, cancellation);
        await RevokeAllAsync(context, person, cancellation);
        var secret = Secrets.New();
        context.CalendarLinks.Add(new CalendarLink { Id = Guid.CreateVersion7(database.Time.GetUtcNow()), PersonId = person, Hash = Secrets.Hash(secret), MadeAt = database.Now });
        await context.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(CancellationToken.None);
        return secret;
    }

    /// <summary>The link a secret belongs to, if it may be read.</summary>
    /// <returns>The link as it was before, or null; and whether it was not read for an hour or more.</returns>
    public async Task<(CalendarLink? Link, bool AfterAWhile)> FindAsync(string secret, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        var hash = Secrets.Hash(secret);
        var link = await context.CalendarLinks.AsNoTracking().SingleOrDefaultAsync(l => l.Hash == hash, cancellation);
        if (link is null)
            return (null, false);
        var (now, due) = (database.Now, database.Now - (long)SeenEvery.TotalMilliseconds);
        // Not read for as long as a device may rest: forgotten in some program.
        if (link.RevokedAt is not null || (link.SeenAt ?? link.MadeAt) < now - (long)Devices.Idle.TotalMilliseconds)
        {
            if (link.RefusedAt is null || link.RefusedAt < due)
                await context.CalendarLinks.Where(l => l.Id == link.Id).ExecuteUpdateAsync(set => set.SetProperty(l => l.RefusedAt, now), cancellation);
            return (null, false);
        }

        var afterAWhile = link.SeenAt is null || link.SeenAt < due;
        if (afterAWhile)
            await context.CalendarLinks.Where(l => l.Id == link.Id).ExecuteUpdateAsync(set => set.SetProperty(l => l.SeenAt, now), cancellation);
        return (link, afterAWhile);
    }

    /// <summary>The links of people that can be read, by person.</summary>
    public async Task<IReadOnlyDictionary<Guid, CalendarLink>> OfAsync(IReadOnlyCollection<Guid> people, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        return await context.CalendarLinks.AsNoTracking().Where(l => people.Contains(l.PersonId) && l.RevokedAt == null).ToDictionaryAsync(l => l.PersonId, cancellation);
    }

    /// <summary>Takes a person's link off.</summary>
    /// <exception cref="AccountsException">They have none.</exception>
    public async Task RevokeAsync(Guid person, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        await using var transaction = await database.BeginAloneAsync(context, cancellation);
        if (await RevokeAllAsync(context, person, cancellation) == 0)
            throw new AccountsException(AccountsFault.Gone, AccountsTexts.NoCalendar);
        await transaction.CommitAsync(CancellationToken.None);
    }

    /// <summary>Takes a person's link off, if they have one, within what else a context does.</summary>
    public Task<int> RevokeAllAsync(AccountsContext context, Guid person, CancellationToken cancellation = default)
    {
        var now = database.Now;
        return context.CalendarLinks.Where(l => l.PersonId == person && l.RevokedAt == null).ExecuteUpdateAsync(set => set.SetProperty(l => l.RevokedAt, now), cancellation);
    }
}
