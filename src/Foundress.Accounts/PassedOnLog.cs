using Foundress.Accounts.Model;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Accounts;

/// <summary>Who gave the server entries that others wrote.</summary>
/// <param name="database">The accounts.</param>
public sealed class PassedOnLog(AccountsDatabase database)
{
    private const int Most = 2_000;

    /// <summary>Notes who gave entries, unless that is noted already: the first to give one counts.</summary>
    public async Task NoteAsync(string operation, IReadOnlyCollection<Guid> entries, Guid person, string device, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        await using var transaction = await database.BeginAloneAsync(context, cancellation);
        var known = await context.PassedOn.Where(p => p.Operation == operation && entries.Contains(p.EntryId)).Select(p => p.EntryId).ToHashSetAsync(cancellation);
        var now = database.Now;
        context.PassedOn.AddRange(entries.Where(entry => !known.Contains(entry)).Distinct().Select(entry => new PassedOnEntry { Operation = operation, EntryId = entry, PersonId = person, Device = device, At = now }));
        await context.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(CancellationToken.None);
    }

    /// <summary>The latest entries given for others, newest first.</summary>
    public async Task<IReadOnlyList<PassedOnEntry>> OfAsync(string operation, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        return await context.PassedOn.AsNoTracking().Where(p => p.Operation == operation).OrderByDescending(p => p.At).Take(Most).ToListAsync(cancellation);
    }
}
