using Foundress.Book;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Storage.Model;

/// <summary>Set union by id within one transaction: the same rule as <see cref="Ledger"/>.</summary>
internal static class EntryUnion
{
    // Few enough ids for one statement.
    private const int LookUp = 500;

    /// <summary>Adds rows of one operation, whose ids are all different.</summary>
    /// <returns>How many the book did not hold before.</returns>
    public static async Task<int> AddAsync(
        IBookDatabase database, BookContext context, IReadOnlyCollection<StoredEntry> rows, CancellationToken cancellation)
    {
        var held = await database.AddNewAsync(context, rows, cancellation);
        var accepted = rows.Count - held.Count;
        foreach (var batch in held.Chunk(LookUp))
        {
            var there = await FindAsync(database, context, batch[0].Operation, Array.ConvertAll(batch, row => row.Id), cancellation);
            foreach (var row in batch)
            {
                var (entry, old) = (row.ToEntry(), there[row.Id]);
                var known = old.ToEntry();
                if (known == entry || !Ledger.ComesBefore(entry, known))
                    continue;
                await context.Entries.Where(e => e.Sequence == old.Sequence).ExecuteDeleteAsync(cancellation);
                await database.AddNewAsync(context, [row], cancellation);
                accepted++;
            }
        }

        return accepted;
    }

    /// <summary>The rows an operation has under some ids.</summary>
    public static async Task<Dictionary<Guid, StoredEntry>> FindAsync(
        IBookDatabase database, BookContext context, string operation, Guid[] ids, CancellationToken cancellation)
    {
        var found = new Dictionary<Guid, StoredEntry>(ids.Length);
        foreach (var some in ids.Chunk(LookUp))
        {
            foreach (var row in await database.FindAsync(context, operation, some, cancellation))
                found.Add(row.Id, row);
        }

        return found;
    }
}
