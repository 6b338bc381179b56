namespace Foundress.Book.Seasons;

/// <summary>Something due on a day.</summary>
/// <param name="On">The day it is best done.</param>
/// <param name="From">First day of the window.</param>
/// <param name="To">Last day of the window.</param>
/// <param name="Text">What is due, in words.</param>
/// <param name="Done">Whether the book shows that it was done.</param>
/// <param name="Overdue">Whether the window has passed without it.</param>
public sealed record DueMark(DateOnly On, DateOnly From, DateOnly To, string Text, bool Done, bool Overdue);
