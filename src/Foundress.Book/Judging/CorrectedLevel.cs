using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Estimation;

namespace Foundress.Book.Judging;

/// <summary>A jar's level as it would be if the method found the share of mites that one source reports. Shown, never judged by.</summary>
/// <param name="Recovery">The share and its source.</param>
/// <param name="Level">The level divided by the share.</param>
/// <param name="Interval">The interval divided by the share; the share's own uncertainty is not in it.</param>
public sealed record CorrectedLevel(Recovery Recovery, MiteLevel Level, LevelInterval Interval)
{
    /// <summary>Corrects a level by one source's recovery.</summary>
    /// <param name="recovery">The share and its source.</param>
    /// <param name="level">The level as counted.</param>
    /// <param name="interval">Its interval.</param>
    internal static CorrectedLevel Of(Recovery recovery, MiteLevel level, LevelInterval interval)
    {
        var share = recovery.Share.Value / 100;
        return new CorrectedLevel(
            recovery, MiteLevel.Per100(level.Per100Bees / share),
            interval with { Lower = MiteLevel.Per100(interval.Lower.Per100Bees / share), Upper = MiteLevel.Per100(interval.Upper.Per100Bees / share) });
    }
}
