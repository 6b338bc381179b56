using Foundress.Book.Judging;
using Foundress.Science.Estimation;
using Foundress.Science.Judging;

namespace Foundress.Cli.Output;

/// <summary>A count on a scale of its own as JSON: never mites per 100 bees. What is not judged is null.</summary>
internal sealed record OtherOutput(
    OtherKind Kind,
    DateOnly Date,
    double Value,
    double Lower,
    double Upper,
    double Confidence,
    string Unit,
    string Counted,
    IReadOnlyList<string> Voids,
    double? Line,
    double? ChanceOverLine,
    Standing? Judgement,
    string? NotJudged,
    MiteRange? AllMites,
    IReadOnlyList<JarLines> Published,
    string Meaning,
    IReadOnlyList<WorkingStep> Working,
    IReadOnlyList<string> Cautions)
{
    internal static OtherOutput Of(OtherReading reading) => new(
        reading.Kind, reading.On, reading.Rate.Value, reading.Rate.Lower, reading.Rate.Upper, reading.Rate.Confidence, reading.Unit, reading.Counted, reading.Voids,
        reading.NotJudged is null ? reading.Lines?.Deciding : null, reading.OverLine?.Value, reading.Standing, reading.NotJudged, reading.Total,
        [.. reading.Published.Select(lines => new JarLines(lines.PolicyId, lines.Title, lines.Unit, lines.Watch, lines.Act, null, lines.Source))],
        reading.Meaning, reading.Working, reading.Cautions);
}
