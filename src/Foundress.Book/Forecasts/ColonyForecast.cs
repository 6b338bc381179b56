using Foundress.Book.Journal;

namespace Foundress.Book.Forecasts;

/// <summary>Where one colony is heading.</summary>
/// <param name="Colony">The colony.</param>
/// <param name="Name">Its name.</param>
/// <param name="Jars">Jars of its own that were used; with none it is foretold from its apiary.</param>
/// <param name="Fan">Its level from its last jar (at most some weeks back) to the last day looked at.</param>
/// <param name="Outlook">When it comes to stand over the line; null when no line on this scale is in force.</param>
/// <param name="NextJar">The day on which a jar would most likely change what the keeper does; null when none would.</param>
/// <param name="NextJarChanges">The chance that it does; 0 when there is no such day.</param>
/// <param name="Thin">True when the counts could hardly be brought together with any course: the forecast is then a wide guess.</param>
/// <param name="Sentence">All of it in plain words.</param>
/// <param name="Supposed">The same with a control that is only supposed; null when none is.</param>
public sealed record ColonyForecast(
    ColonyId Colony,
    string Name,
    int Jars,
    IReadOnlyList<FanPoint> Fan,
    LineOutlook? Outlook,
    DateOnly? NextJar,
    double NextJarChanges,
    bool Thin,
    string Sentence,
    SupposedCourse? Supposed = null);
