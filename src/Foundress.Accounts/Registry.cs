using Foundress.Accounts.Model;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Accounts;

/// <summary>What the owner of the server does with accounts from its console, past every role.</summary>
/// <param name="database">The accounts.</param>
public sealed class Registry(AccountsDatabase database)
{
    /// <summary>Everybody, by name.</summary>
    public async Task<IReadOnlyList<Standing>> EverybodyAsync(CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        var people = await context.Users.AsNoTracking().OrderBy(p => p.UserName).Select(p => new { p.Id, p.UserName, p.IsAdministrator }).ToListAsync(cancellation);
        var roles = (await context.Memberships.AsNoTracking().Where(m => m.EndedAt == null).ToListAsync(cancellation)).ToLookup(m => m.PersonId);
        return people.ConvertAll(p => new Standing(p.Id, p.UserName!, p.IsAdministrator, roles[p.Id].ToDictionary(m => m.Operation, m => m.Role, StringComparer.Ordinal)));
    }

    /// <summary>The person of a name.</summary>
    /// <exception cref="AccountsException">There is none.</exception>
    public async Task<Guid> FindAsync(string name, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        return (await OneAsync(context, name, cancellation)).Id;
    }

    /// <summary>Takes everything from somebody: roles, devices, sessions, and being an administrator. Their name stays theirs, and what they recorded stays.</summary>
    /// <exception cref="AccountsException">There is nobody of that name.</exception>
    public async Task CloseAsync(string name, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        await using var transaction = await database.BeginAloneAsync(context, cancellation);
        var person = await OneAsync(context, name, cancellation);
        var now = database.Now;
        (person.IsAdministrator, person.PasswordHash) = (false, null);
        // A new stamp ends every session, and whoever has read the person before cannot write the old state back.
        (person.SecurityStamp, person.ConcurrencyStamp) = (Secrets.New(), Secrets.New());
        await context.SaveChangesAsync(cancellation);
        await context.UserPasskeys.Where(p => p.UserId == person.Id).ExecuteDeleteAsync(cancellation);
        await context.Memberships.Where(m => m.PersonId == person.Id && m.EndedAt == null).ExecuteUpdateAsync(set => set.SetProperty(m => m.EndedAt, now), cancellation);
        await new Devices(database).RevokeAllAsync(context, person.Id, cancellation);
        await new CalendarLinks(database).RevokeAllAsync(context, person.Id, cancellation);
        await context.Links.Where(l => (l.PersonId == person.Id || l.MadeBy == person.Id) && l.UsedAt == null).ExecuteUpdateAsync(set => set.SetProperty(l => l.WithdrawnAt, now), cancellation);
        await transaction.CommitAsync(CancellationToken.None);
    }

    private static async Task<Person> OneAsync(AccountsContext context, string name, CancellationToken cancellation)
    {
        var key = PersonNames.Key(name);
        return await context.Users.SingleOrDefaultAsync(p => p.NormalizedUserName == key, cancellation)
            ?? throw new AccountsException(AccountsFault.Gone, AccountsTexts.FormatNobodyCalled(name));
    }
}
