using Foundress.Accounts.Model;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Accounts;

/// <summary>One-time links: made, looked at, used once, taken back.</summary>
/// <param name="database">The accounts.</param>
public sealed class OneTimeLinks(AccountsDatabase database)
{
    /// <summary>Makes a link.</summary>
    /// <param name="offer">What it is to do.</param>
    /// <param name="maker">Who makes it; null for the console of the server.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<MadeLink> MakeAsync(LinkOffer offer, Guid? maker, CancellationToken cancellation = default)
    {
        if (offer.Lasts <= TimeSpan.Zero || offer.Lasts > LinkOffer.Longest)
            throw new AccountsException(AccountsFault.Value, AccountsTexts.FormatLinkDays(LinkOffer.Longest.Days));
        var secret = Secrets.New();
        var link = new OneTimeLink
        {
            Id = Guid.CreateVersion7(database.Time.GetUtcNow()),
            Hash = Secrets.Hash(secret),
            Operation = offer.Operation,
            Role = offer.Role,
            Administrator = offer.Administrator,
            ForName = offer.ForName,
            PersonId = offer.Person,
            MadeBy = maker,
            MadeAt = database.Now,
            ExpiresAt = database.Now + (long)offer.Lasts.TotalMilliseconds,
        };
        await using var context = database.Open();
        context.Links.Add(link);
        await context.SaveChangesAsync(cancellation);
        return new MadeLink(link.Id, secret, DateTimeOffset.FromUnixTimeMilliseconds(link.ExpiresAt));
    }

    /// <summary>What a link would do, without using it.</summary>
    /// <exception cref="AccountsException">It cannot be used.</exception>
    public async Task<OneTimeLink> LookAsync(string secret, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        return await LookAsync(context, secret, cancellation);
    }

    /// <summary>The same within what else a context does.</summary>
    /// <exception cref="AccountsException">It cannot be used.</exception>
    public async Task<OneTimeLink> LookAsync(AccountsContext context, string secret, CancellationToken cancellation = default)
    {
        var hash = Secrets.Hash(secret);
        return Usable(await context.Links.AsNoTracking().SingleOrDefaultAsync(l => l.Hash == hash, cancellation));
    }

    /// <summary>Uses a link up, within the caller's transaction, so that it is used only if all it leads to comes about.</summary>
    /// <exception cref="AccountsException">It cannot be used, or another was quicker.</exception>
    public async Task<OneTimeLink> UseAsync(AccountsContext context, string secret, Guid person, CancellationToken cancellation = default)
    {
        var (hash, now) = (Secrets.Hash(secret), database.Now);
        var used = await context.Links.Where(l => l.Hash == hash && l.UsedAt == null && l.WithdrawnAt == null && l.ExpiresAt > now)
            .ExecuteUpdateAsync(set => set.SetProperty(l => l.UsedAt, now).SetProperty(l => l.UsedBy, person), cancellation);
        var link = await context.Links.AsNoTracking().SingleOrDefaultAsync(l => l.Hash == hash, cancellation);
        return used == 1 ? link! : Usable(link);
    }

    /// <summary>Gives what an invitation gives, within the caller's transaction.</summary>
    public async Task GrantAsync(AccountsContext context, OneTimeLink link, Person person, CancellationToken cancellation = default)
    {
        if (link.Operation is not null)
            await Members.AddAsync(context, link.Operation, person.Id, link.Role, database.Now, cancellation);
        person.IsAdministrator |= link.Administrator;
        // Whoever has read the person before cannot write the old state back.
        person.ConcurrencyStamp = Secrets.New();
        await context.SaveChangesAsync(cancellation);
    }

    /// <summary>The invitations to an operation that can still be used, newest first.</summary>
    public async Task<IReadOnlyList<OneTimeLink>> OpenOfAsync(string operation, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        var now = database.Now;
        return await context.Links.AsNoTracking().Where(l => l.Operation == operation && l.UsedAt == null && l.WithdrawnAt == null && l.ExpiresAt > now)
            .OrderByDescending(l => l.MadeAt).ToListAsync(cancellation);
    }

    /// <summary>Takes an invitation back.</summary>
    /// <exception cref="AccountsException">There is none, or it was used already.</exception>
    public async Task WithdrawAsync(string operation, Guid id, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        var now = database.Now;
        var done = await context.Links.Where(l => l.Id == id && l.Operation == operation && l.UsedAt == null)
            .ExecuteUpdateAsync(set => set.SetProperty(l => l.WithdrawnAt, now), cancellation);
        if (done == 0)
            throw new AccountsException(AccountsFault.Gone, AccountsTexts.NoSuchInvitation);
    }

    private OneTimeLink Usable(OneTimeLink? link)
    {
        if (link is null)
            throw new AccountsException(AccountsFault.Gone, AccountsTexts.LinkUnknown);
        if (link.UsedAt is not null)
            throw new AccountsException(AccountsFault.Gone, AccountsTexts.LinkUsed);
        if (link.WithdrawnAt is not null)
            throw new AccountsException(AccountsFault.Gone, AccountsTexts.LinkTakenBack);
        return link.ExpiresAt > database.Now
            ? link
            : throw new AccountsException(AccountsFault.Gone, AccountsTexts.LinkRunOut);
    }
}
