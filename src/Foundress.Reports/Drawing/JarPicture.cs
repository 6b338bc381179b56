using Foundress.Science.Judging;

namespace Foundress.Reports.Drawing;

/// <summary>One jar's answer, ready to be drawn. Levels are in mites per 100 bees.</summary>
/// <param name="Title">What the picture is, for example the colony and the day.</param>
/// <param name="Sentence">The answer in words, for readers who do not see the picture.</param>
/// <param name="Level">The level counted.</param>
/// <param name="Lower">Lower end of the interval.</param>
/// <param name="Upper">Upper end of the interval.</param>
/// <param name="Watch">From here a control may be needed; null when there is no such line.</param>
/// <param name="Act">Above here a control is needed; null when no line fits the method.</param>
/// <param name="Standing">Where the jar stands; null when there is no line.</param>
/// <param name="ChanceOverAct">The chance, 0 to 1, that the colony's level is above <paramref name="Act"/>; null when there is no line.</param>
/// <param name="Density">The curve, by ascending level; empty draws the interval alone.</param>
public sealed record JarPicture(
    string Title,
    string Sentence,
    double Level,
    double Lower,
    double Upper,
    double? Watch,
    double? Act,
    Standing? Standing,
    double? ChanceOverAct,
    IReadOnlyList<DensityPoint> Density);
