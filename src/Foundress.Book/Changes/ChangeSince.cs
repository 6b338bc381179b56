using Foundress.Book.Journal;
using Foundress.Science;
using Foundress.Science.Estimation;

namespace Foundress.Book.Changes;

/// <summary>How the level of an apiary or of a colony moved between two visits.</summary>
/// <param name="Since">Day of the earlier visit.</param>
/// <param name="Days">Days between the visits, at least 1.</param>
/// <param name="Ratio">Later level over earlier one, as likely to be exceeded as not.</param>
/// <param name="RatioInterval">Its interval.</param>
/// <param name="PerDay">Growth of the natural logarithm of the level per day: 0.021 is 2.1 % a day.</param>
/// <param name="PerDayInterval">Its interval.</param>
/// <param name="Grown">The chance that the later level is the higher one.</param>
/// <param name="Colonies">For an apiary: the colonies sampled at both visits, fastest growth first. Empty for a colony.</param>
/// <param name="Sentence">The change in plain words.</param>
public sealed record ChangeSince(
    DateOnly Since,
    int Days,
    double Ratio,
    ChangeInterval RatioInterval,
    double PerDay,
    ChangeInterval PerDayInterval,
    Chance Grown,
    IReadOnlyList<(ColonyId Colony, ChangeSince Change)> Colonies,
    string Sentence);
