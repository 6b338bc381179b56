using Foundress.Accounts.Model;

namespace Foundress.Server.Accounts;

/// <summary>A calendar link that can be read. Where nobody read it yet, it was never seen.</summary>
internal sealed record CalendarLine(DateTimeOffset Made, DateTimeOffset? Seen)
{
    public static CalendarLine? Of(CalendarLink? link) => link is null
        ? null
        : new(DateTimeOffset.FromUnixTimeMilliseconds(link.MadeAt), link.SeenAt is { } seen ? DateTimeOffset.FromUnixTimeMilliseconds(seen) : null);
}
