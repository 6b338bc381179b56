using Foundress.Book.Journal;

namespace Foundress.Book.Forecasts;

/// <summary>Where the colonies of an apiary are heading.</summary>
/// <param name="Apiary">The apiary.</param>
/// <param name="Today">The day it was worked out for.</param>
/// <param name="To">The last day looked at.</param>
/// <param name="Fan">The level of any one of its colonies, taken at random, from today on.</param>
/// <param name="Colonies">Its living colonies, those that need their keeper soonest first.</param>
/// <param name="ExpectedOver">How many of them are expected to have been over the line by the last day; null without a line.</param>
/// <param name="Soonest">The first day by which some colony has been over the line with 50 chances in 100; null when none has.</param>
/// <param name="Sentence">All of it in plain words.</param>
public sealed record ApiaryCourse(
    ApiaryId Apiary,
    DateOnly Today,
    DateOnly To,
    IReadOnlyList<FanPoint> Fan,
    IReadOnlyList<ColonyForecast> Colonies,
    double? ExpectedOver,
    DateOnly? Soonest,
    string Sentence)
{
    /// <summary>Apiaries in the order in which they need their keeper: the soonest over the line first, then the most colonies over it.</summary>
    public static IOrderedEnumerable<ApiaryCourse> InOrder(IEnumerable<ApiaryCourse> courses) => courses
        .OrderBy(course => course.Soonest ?? DateOnly.MaxValue)
        .ThenByDescending(course => course.ExpectedOver ?? 0);
}
