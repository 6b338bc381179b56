using Foundress.Science.Sampling;

namespace Foundress.Knowledge;

/// <summary>Rules of thumb of the trade on how many colonies to count, and how often.</summary>
/// <param name="CountAllBelow">With fewer colonies than this, count all of them.</param>
/// <param name="ColoniesInOneApiary">In one larger apiary, count this many, drawn at random.</param>
/// <param name="ShareOfColoniesLow">With several apiaries, at least this share of all colonies, per cent.</param>
/// <param name="ShareOfColoniesHigh">With several apiaries, up to this share of all colonies, per cent.</param>
/// <param name="TimesPerYear">Least number of counts in a year.</param>
/// <param name="DaysAfterControl">After a control ends, count again within this many days.</param>
/// <param name="BeesPerJar">Bees in a jar.</param>
/// <param name="Design">What a round is planned to do until the keeper says otherwise.</param>
/// <param name="Published">What publications say on the same matters, for readers who want more than a rule of thumb.</param>
public sealed record SamplingRules(
    Figure CountAllBelow,
    Figure ColoniesInOneApiary,
    Figure ShareOfColoniesLow,
    Figure ShareOfColoniesHigh,
    Figure TimesPerYear,
    Figure DaysAfterControl,
    Figure BeesPerJar,
    DesignDefaults Design,
    IReadOnlyList<Fact> Published)
{
    /// <summary>The rules as the sampling computations take them.</summary>
    public RuleOfThumb ToRuleOfThumb() => new(
        (int)CountAllBelow.Value, (int)ColoniesInOneApiary.Value, ShareOfColoniesLow.Value / 100, ShareOfColoniesHigh.Value / 100,
        (int)TimesPerYear.Value, (int)DaysAfterControl.Value);
}
