using Foundress.Book.Forecasts;
using Foundress.Science.Judging;

namespace Foundress.Book.Seasons;

/// <summary>
/// One apiary's year as a picture's worth of data: what stands on its strip, and the sentence above it. The same data is
/// drawn on the phone, in print and in reports.
/// </summary>
/// <param name="Apiary">The apiary's name.</param>
/// <param name="From">First day shown.</param>
/// <param name="To">Last day shown.</param>
/// <param name="Today">The day the strip was made.</param>
/// <param name="Sentence">One plain sentence: what matters and what to do next.</param>
/// <param name="Phases">The season's phases, in order, without gaps.</param>
/// <param name="Lines">The lines in force, in order; a stretch with no published line is missing.</param>
/// <param name="Jars">The jars taken, by day.</param>
/// <param name="Dues">What is due, by day.</param>
public sealed record SeasonStrip(
    string Apiary,
    DateOnly From,
    DateOnly To,
    DateOnly Today,
    string Sentence,
    IReadOnlyList<PhaseSpan> Phases,
    IReadOnlyList<LineStep> Lines,
    IReadOnlyList<JarMark> Jars,
    IReadOnlyList<DueMark> Dues)
{
    /// <summary>Counts on other scales, by day. They stand beside the jars and are never set against their lines.</summary>
    public IReadOnlyList<OtherMark> Others { get; init; } = [];

    /// <summary>Controls, by their first day.</summary>
    public IReadOnlyList<ControlBar> Controls { get; init; } = [];

    /// <summary>Where it is heading, by day; empty until it was worked out.</summary>
    public IReadOnlyList<FanPoint> Fan { get; init; } = [];
}
