using Foundress.Book.Records;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Judging;

namespace Foundress.Book.Judging;

/// <summary>Everything one jar tells.</summary>
/// <param name="Facts">What was recorded.</param>
/// <param name="Method">The counting method.</param>
/// <param name="Level">Mites counted per 100 bees, on the method's own scale, not corrected for recovery.</param>
/// <param name="Interval">Its interval: exact when the bees were counted, from the posterior when they were not.</param>
/// <param name="Posterior">What the jar says of the level, as a distribution.</param>
/// <param name="Lines">The lines it is judged by; null when none apply.</param>
/// <param name="NotJudged">Why it is not judged; null when it is.</param>
/// <param name="OverWatch">Chance that the level is over the lower line; null when there is none.</param>
/// <param name="OverLine">Chance that the level is over the deciding line; null when not judged.</param>
/// <param name="Standing">The three-way judgement; null when not judged.</param>
/// <param name="Meaning">What that usually means now, in plain sentences.</param>
/// <param name="SharpenWhenAsked">What would narrow the answer, worked out only when asked for: it takes many times as long as the rest.</param>
/// <param name="Working">How it was worked out.</param>
/// <param name="Passes">What repeat passes tell; null for a single pass.</param>
/// <param name="Corrected">What the level would be if the method found the share that each source reports. Shown, not used.</param>
/// <param name="Cautions">What to mind with this method.</param>
public sealed record JarReading(
    JarRecord Facts,
    CountingMethod Method,
    MiteLevel Level,
    LevelInterval Interval,
    LevelPosterior Posterior,
    LinesInForce? Lines,
    string? NotJudged,
    Chance? OverWatch,
    Chance? OverLine,
    Standing? Standing,
    string Meaning,
    Lazy<IReadOnlyList<string>> SharpenWhenAsked,
    IReadOnlyList<WorkingStep> Working,
    PassesReading? Passes,
    IReadOnlyList<CorrectedLevel> Corrected,
    IReadOnlyList<string> Cautions)
{
    /// <summary>What would narrow the answer, best first.</summary>
    public IReadOnlyList<string> Sharpen => SharpenWhenAsked.Value;
}
