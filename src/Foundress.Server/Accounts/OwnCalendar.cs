namespace Foundress.Server.Accounts;

/// <summary>Whether the one who asks has a calendar link.</summary>
internal sealed record OwnCalendar(CalendarLine? Link);
