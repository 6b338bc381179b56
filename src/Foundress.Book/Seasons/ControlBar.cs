namespace Foundress.Book.Seasons;

/// <summary>A control on a strip: a bar over the days it was at work.</summary>
/// <param name="Title">What was used.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day, or the day up to which it is known or planned to be at work.</param>
/// <param name="Open">Whether nobody said yet that it ended.</param>
/// <param name="Colonies">In how many colonies.</param>
/// <param name="Ending">How it ended, in words; empty while it is open and when it ran as planned.</param>
public sealed record ControlBar(string Title, DateOnly From, DateOnly To, bool Open, int Colonies, string Ending);
