using Foundress.Accounts.Model;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Accounts;

/// <summary>Who belongs to which operation, and as what.</summary>
/// <param name="database">The accounts.</param>
public sealed class Members(AccountsDatabase database)
{
    /// <summary>Who somebody is now; null when there is no such person.</summary>
    public async Task<Standing?> StandingOfAsync(Guid person, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        var found = await context.Users.AsNoTracking().Where(p => p.Id == person).Select(p => new { p.UserName, p.IsAdministrator }).SingleOrDefaultAsync(cancellation);
        if (found is null)
            return null;
        var roles = await context.Memberships.AsNoTracking().Where(m => m.PersonId == person && m.EndedAt == null)
            .ToDictionaryAsync(m => m.Operation, m => m.Role, StringComparer.Ordinal, cancellation);
        return new Standing(person, found.UserName!, found.IsAdministrator, roles);
    }

    /// <summary>Whether anybody has an account.</summary>
    public async Task<bool> AnyAsync(CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        return await context.Users.AnyAsync(cancellation);
    }

    /// <summary>The members of an operation, by name.</summary>
    public async Task<IReadOnlyList<Member>> OfAsync(string operation, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        var rows = await context.Memberships.AsNoTracking().Where(m => m.Operation == operation && m.EndedAt == null)
            .Join(context.Users, m => m.PersonId, p => p.Id, (m, p) => new { p.Id, p.UserName, m.Role, m.Since })
            .OrderBy(row => row.UserName).ToListAsync(cancellation);
        return rows.ConvertAll(row => new Member(row.Id, row.UserName!, row.Role, DateTimeOffset.FromUnixTimeMilliseconds(row.Since)));
    }

    /// <summary>The names that records of an operation may carry only when they come from their owner: of members, past and present.</summary>
    /// <returns>Owners by the key of their name.</returns>
    public async Task<IReadOnlyDictionary<string, Guid>> NamesAsync(string operation, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        return await context.Memberships.AsNoTracking().Where(m => m.Operation == operation)
            .Join(context.Users, m => m.PersonId, p => p.Id, (m, p) => new { p.Id, p.NormalizedUserName })
            .ToDictionaryAsync(row => row.NormalizedUserName!, row => row.Id, StringComparer.Ordinal, cancellation);
    }

    /// <summary>Gives a member another role.</summary>
    /// <exception cref="AccountsException">They are no member, or the last keeper.</exception>
    public Task ChangeAsync(string operation, Guid person, Role role, CancellationToken cancellation = default) =>
        AlterAsync(operation, person, role < Role.Keeper, membership => membership.Role = role, cancellation);

    /// <summary>Ends a membership. What they recorded stays.</summary>
    /// <exception cref="AccountsException">They are no member, or the last keeper.</exception>
    public Task RemoveAsync(string operation, Guid person, CancellationToken cancellation = default) =>
        AlterAsync(operation, person, true, membership => membership.EndedAt = database.Now, cancellation);

    /// <summary>Makes somebody a member, or gives a member the role when it is a greater one than theirs.</summary>
    internal static async Task AddAsync(AccountsContext context, string operation, Guid person, Role role, long now, CancellationToken cancellation)
    {
        var held = await context.Memberships.FindAsync([person, operation], cancellation);
        if (held is null)
        {
            context.Memberships.Add(new Membership { PersonId = person, Operation = operation, Role = role, Since = now });
        }
        else if (held.EndedAt is not null)
        {
            (held.Role, held.Since, held.EndedAt) = (role, now, null);
        }
        else if (role > held.Role)
        {
            held.Role = role;
        }
    }

    private async Task AlterAsync(string operation, Guid person, bool endsKeeping, Action<Membership> change, CancellationToken cancellation)
    {
        await using var context = database.Open();
        // Alone, so that two keepers cannot remove each other at once.
        await using var transaction = await database.BeginAloneAsync(context, cancellation);
        var membership = await context.Memberships.SingleOrDefaultAsync(m => m.PersonId == person && m.Operation == operation && m.EndedAt == null, cancellation)
            ?? throw new AccountsException(AccountsFault.Gone, AccountsTexts.FormatNoMember(operation));
        if (endsKeeping && membership.Role == Role.Keeper
            && !await context.Memberships.AnyAsync(m => m.Operation == operation && m.PersonId != person && m.Role == Role.Keeper && m.EndedAt == null, cancellation))
        {
            throw new AccountsException(AccountsFault.Conflict, AccountsTexts.FormatLastKeeper(operation));
        }

        change(membership);
        await context.SaveChangesAsync(cancellation);
        // Otherwise somebody who is to go could have left a door open for themselves.
        var now = database.Now;
        if (endsKeeping)
            await context.Links.Where(l => l.Operation == operation && l.MadeBy == person && l.UsedAt == null).ExecuteUpdateAsync(set => set.SetProperty(l => l.WithdrawnAt, now), cancellation);
        await transaction.CommitAsync(CancellationToken.None);
    }
}
