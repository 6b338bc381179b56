using System.Security.Cryptography;
using System.Text.Json;
using Foundress.Accounts.Model;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Accounts.Moving;

/// <summary>
/// Copies all accounts from one database into another of either system, within the transactions of both, and reads back what
/// was written. Rows that only have a running number get a new one, in the same order.
/// </summary>
internal static class AccountsCopy
{
    private const int Batch = 500;

    // Those that others point at first.
    private static readonly ITable[] Tables =
    [
        new Table<Person>(() => MovingTexts.People, rows => rows.OrderBy(p => p.Id), person => person.LockoutEnd = person.LockoutEnd is { } end ? Whole(end) : null),
        new Table<IdentityUserClaim<Guid>>(() => MovingTexts.Claims, rows => rows.OrderBy(c => c.Id), claim => claim.Id = 0),
        new Table<IdentityUserLogin<Guid>>(() => MovingTexts.OutsideSignIns, rows => rows.OrderBy(l => l.LoginProvider).ThenBy(l => l.ProviderKey)),
        new Table<IdentityUserToken<Guid>>(() => MovingTexts.Tokens, rows => rows.OrderBy(t => t.UserId).ThenBy(t => t.LoginProvider).ThenBy(t => t.Name)),
        new Table<IdentityUserPasskey<Guid>>(() => MovingTexts.Passkeys, rows => rows.OrderBy(p => p.CredentialId), passkey => passkey.Data.CreatedAt = Whole(passkey.Data.CreatedAt)),
        new Table<Membership>(() => MovingTexts.Memberships, rows => rows.OrderBy(m => m.PersonId).ThenBy(m => m.Operation)),
        new Table<EnrolledDevice>(() => MovingTexts.Devices, rows => rows.OrderBy(d => d.Id)),
        new Table<CalendarLink>(() => MovingTexts.CalendarAddresses, rows => rows.OrderBy(l => l.Id)),
        new Table<OneTimeLink>(() => MovingTexts.Links, rows => rows.OrderBy(l => l.Id)),
        new Table<SignInRecord>(() => MovingTexts.SignIns, rows => rows.OrderBy(s => s.Id), record => record.Id = 0),
        new Table<PassedOnEntry>(() => MovingTexts.PassedOn, rows => rows.OrderBy(p => p.Operation).ThenBy(p => p.EntryId)),
        new Table<DataProtectionKey>(() => MovingTexts.CookieKeys, rows => rows.OrderBy(k => k.Id), key => key.Id = 0),
    ];

    /// <summary>The kinds of rows that are copied; the tests hold them against the model.</summary>
    internal static IEnumerable<Type> Kinds => Tables.Select(table => table.Kind);

    /// <summary>Copies everything.</summary>
    public static async Task<IReadOnlyList<CopiedTable>> RunAsync(AccountsContext from, AccountsContext to, CancellationToken cancellation)
    {
        var done = new List<CopiedTable>();
        foreach (var table in Tables)
            done.Add(await table.CopyAsync(from, to, cancellation));
        return done;
    }

    // PostgreSQL keeps one place less of a second than the file.
    private static DateTimeOffset Whole(DateTimeOffset time) => DateTimeOffset.FromUnixTimeMilliseconds(time.ToUnixTimeMilliseconds());

    private interface ITable
    {
        Type Kind { get; }

        Task<CopiedTable> CopyAsync(AccountsContext from, AccountsContext to, CancellationToken cancellation);
    }

    private sealed class Table<T>(Func<string> words, Func<IQueryable<T>, IOrderedQueryable<T>> order, Action<T>? tidy = null) : ITable
        where T : class
    {
        public Type Kind => typeof(T);

        public async Task<CopiedTable> CopyAsync(AccountsContext from, AccountsContext to, CancellationToken cancellation)
        {
            var written = new Dictionary<string, int>(StringComparer.Ordinal);
            var (copied, there) = (0L, 0L);
            await foreach (var rows in RowsAsync(from, cancellation).Chunk(Batch).WithCancellation(cancellation))
            {
                foreach (var print in rows.Select(Print))
                    written[print] = written.GetValueOrDefault(print) + 1;
                to.AddRange(rows);
                await to.SaveChangesAsync(cancellation);
                to.ChangeTracker.Clear();
                copied += rows.Length;
            }

            // What was there before is not counted: a target may hold keys and links of its own.
            await foreach (var row in RowsAsync(to, cancellation).WithCancellation(cancellation))
            {
                if (written.GetValueOrDefault(Print(row)) is var left and > 0)
                    (written[Print(row)], there) = (left - 1, there + 1);
            }

            return new CopiedTable(words(), copied, there, there == copied);
        }

        private async IAsyncEnumerable<T> RowsAsync(AccountsContext context, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellation)
        {
            await foreach (var row in order(context.Set<T>().AsNoTracking()).AsAsyncEnumerable().WithCancellation(cancellation))
            {
                tidy?.Invoke(row);
                yield return row;
            }
        }

        private static string Print(T row) => Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(row)));
    }
}
