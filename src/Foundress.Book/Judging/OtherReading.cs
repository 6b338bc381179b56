using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Judging;

namespace Foundress.Book.Judging;

/// <summary>Everything one count on another scale tells. It is never turned into mites per 100 bees.</summary>
/// <param name="Kind">What was counted.</param>
/// <param name="On">The day.</param>
/// <param name="Method">The method's name.</param>
/// <param name="Unit">The scale's unit: mites a day, or per cent of cells.</param>
/// <param name="Rate">The count on that scale with its interval, which holds the chance of counting only.</param>
/// <param name="Counted">What was counted, in words.</param>
/// <param name="Voids">Why it says nothing or little, in whole sentences; empty when it is sound.</param>
/// <param name="Lines">The keeper's lines for this scale and day; null when there are none.</param>
/// <param name="NotJudged">Why it is not judged; null when it is.</param>
/// <param name="OverLine">Chance that the rate is over the deciding line; null when not judged.</param>
/// <param name="Standing">The three-way judgement; null when not judged.</param>
/// <param name="Total">Range of all mites in the colony; null when it cannot be given.</param>
/// <param name="TotalSaid">The range in a sentence, or why there is none; null for opened brood.</param>
/// <param name="Published">What published sets of lines on this scale say for the day.</param>
/// <param name="Meaning">What that usually means now, in plain sentences.</param>
/// <param name="Working">How it was worked out.</param>
/// <param name="Cautions">What to mind with this method.</param>
public sealed record OtherReading(
    OtherKind Kind,
    DateOnly On,
    string Method,
    string Unit,
    RateInterval Rate,
    string Counted,
    IReadOnlyList<string> Voids,
    LinesInForce? Lines,
    string? NotJudged,
    Chance? OverLine,
    Standing? Standing,
    MiteRange? Total,
    string? TotalSaid,
    IReadOnlyList<LinesInForce> Published,
    string Meaning,
    IReadOnlyList<WorkingStep> Working,
    IReadOnlyList<string> Cautions);
