using System.Net;
using System.Net.Sockets;
using Foundress.Accounts.Model;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Accounts;

/// <summary>Who tried to sign in, when, how, and from which network.</summary>
/// <param name="database">The accounts.</param>
public sealed class SignInLog(AccountsDatabase database)
{
    /// <summary>How long a try is kept.</summary>
    public static readonly TimeSpan Kept = TimeSpan.FromDays(400);

    // A calendar program asks many times a day, often from networks that take turns.
    private static readonly TimeSpan CalendarEvery = TimeSpan.FromDays(30);

    private const int Most = 200;

    /// <summary>Notes a try.</summary>
    public async Task NoteAsync(Guid? person, SignInWay way, SignInResult result, IPAddress? address, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        context.SignIns.Add(new SignInRecord { At = database.Now, PersonId = person, Way = way, Result = result, Network = Network(address) });
        await context.SaveChangesAsync(cancellation);
    }

    /// <summary>Notes that a calendar program read for somebody, unless it is noted lately from the same network.</summary>
    public async Task NoteCalendarAsync(Guid person, IPAddress? address, CancellationToken cancellation = default)
    {
        var (network, since) = (Network(address), database.Now - (long)CalendarEvery.TotalMilliseconds);
        await using (var context = database.Open())
        {
            if (await context.SignIns.AnyAsync(s => s.At > since && s.PersonId == person && s.Way == SignInWay.Calendar && s.Result == SignInResult.Let && s.Network == network, cancellation))
                return;
        }

        await NoteAsync(person, SignInWay.Calendar, SignInResult.Let, address, cancellation);
    }

    /// <summary>The latest tries of an operation's members, newest first.</summary>
    public async Task<IReadOnlyList<SeenSignIn>> OfOperationAsync(string operation, CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        var members = context.Memberships.Where(m => m.Operation == operation && m.EndedAt == null).Select(m => (Guid?)m.PersonId);
        return await ReadAsync(context, context.SignIns.Where(s => members.Contains(s.PersonId)), cancellation);
    }

    /// <summary>The latest tries of everybody, newest first.</summary>
    public async Task<IReadOnlyList<SeenSignIn>> AllAsync(CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        return await ReadAsync(context, context.SignIns, cancellation);
    }

    /// <summary>Forgets tries older than <see cref="Kept"/>.</summary>
    public async Task PruneAsync(CancellationToken cancellation = default)
    {
        await using var context = database.Open();
        var least = database.Now - (long)Kept.TotalMilliseconds;
        await context.SignIns.Where(s => s.At < least).ExecuteDeleteAsync(cancellation);
    }

    /// <summary>The network of an address: enough to tell home from elsewhere, not enough to find somebody.</summary>
    public static string Network(IPAddress? address)
    {
        if (address is null)
            return "";
        if (address.IsIPv4MappedToIPv6)
            address = address.MapToIPv4();
        var bytes = address.GetAddressBytes();
        // The last of four parts, or all but the first three of eight.
        Array.Clear(bytes, bytes.Length == 4 ? 3 : 6, bytes.Length == 4 ? 1 : 10);
        return new IPAddress(bytes) + (address.AddressFamily == AddressFamily.InterNetwork ? "/24" : "/48");
    }

    private static async Task<IReadOnlyList<SeenSignIn>> ReadAsync(AccountsContext context, IQueryable<SignInRecord> from, CancellationToken cancellation)
    {
        var rows = await from.AsNoTracking().OrderByDescending(s => s.Id).Take(Most)
            .GroupJoin(context.Users, s => s.PersonId, p => p.Id, (s, people) => new { s, people })
            .SelectMany(row => row.people.DefaultIfEmpty(), (row, person) => new { row.s, Name = person == null ? null : person.UserName })
            .ToListAsync(cancellation);
        return rows.OrderByDescending(row => row.s.Id)
            .Select(row => new SeenSignIn(DateTimeOffset.FromUnixTimeMilliseconds(row.s.At), row.Name, row.s.Way, row.s.Result, row.s.Network)).ToList();
    }
}
