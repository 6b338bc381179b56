namespace Foundress.Book.Forecasts;

/// <summary>What a control would change, if it were given.</summary>
/// <param name="Control">Its title.</param>
/// <param name="On">The day it would begin.</param>
/// <param name="Fan">The level from today on, with it.</param>
/// <param name="Outlook">When the colony would come to stand over the line; null when no line on this scale is in force.</param>
/// <param name="Sentence">The difference in plain words.</param>
public sealed record SupposedCourse(string Control, DateOnly On, IReadOnlyList<FanPoint> Fan, LineOutlook? Outlook, string Sentence);
