namespace Foundress.Server.Accounts;

/// <summary>A calendar link just made: its addresses, told this once.</summary>
internal sealed record CalendarReply(IReadOnlyList<CalendarAddress> Calendars);
