using Foundress.Science;
using Foundress.Science.Dynamics;
using Foundress.Science.Forecasting;

namespace Foundress.Knowledge;

/// <summary>What is taken as given about mites: how they live, how much colonies differ, how counts scatter.</summary>
/// <remarks>Safe for concurrent use: immutable.</remarks>
/// <param name="Life">The figures of the model.</param>
/// <param name="Priors">How much colonies and apiaries differ, and how jars scatter.</param>
/// <param name="FallLogSpread">Log spread of the factor from daily fall to all mites.</param>
/// <param name="CellsSize">Size of the scatter of infested cells between combs.</param>
/// <param name="NorthernLevels">What a colony of which nothing is known carries, by month from January as read in the north; 12 entries.</param>
public sealed record MiteFacts(MiteBiology Life, ForecastPriors Priors, Figure FallLogSpread, Figure CellsSize, IReadOnlyList<Figure> NorthernLevels)
{
    /// <summary>The usual level on a day: between the middles of the months along a straight line.</summary>
    public MiteLevel UsualLevel(DateOnly day, Hemisphere hemisphere)
    {
        var month = ((day.DayOfYear - 1) * 12d / 366d) - 0.5 + (hemisphere == Hemisphere.South ? 6 : 0);
        var whole = (int)Math.Floor(month);
        var part = month - whole;
        return MiteLevel.Per100((NorthernLevels[(whole + 12) % 12].Value * (1 - part)) + (NorthernLevels[(whole + 13) % 12].Value * part));
    }
}
