namespace Foundress.Server.Accounts;

/// <summary>Where a calendar program reads one operation's calendar.</summary>
internal sealed record CalendarAddress(string Operation, string Address);
