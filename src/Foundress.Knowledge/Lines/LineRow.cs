using Foundress.Science.Judging;

namespace Foundress.Knowledge;

/// <summary>One row of a policy: the lines that hold in some phases or some months, for all colonies or one class of them.</summary>
/// <param name="Phases">Phases the row is for; empty when the source does not speak of phases.</param>
/// <param name="Months">Calendar months, 1 to 12, in the hemisphere of the policy; empty when the source does not speak of months.</param>
/// <param name="ColonyClass">The class of colonies the source names, such as <c>young-colony</c>; null when the row is for every colony not named elsewhere.</param>
/// <param name="Watch">From this level on a control may be needed; null when the source gives no such line.</param>
/// <param name="Act">Above this level a control is needed; null when the source gives no such line.</param>
/// <param name="WatchMeans">What the source says of the first line, in our own words; null when it is the usual "may be needed".</param>
/// <param name="ActMeans">What the source says of the second line, in our own words; null when it is the usual "needed".</param>
/// <param name="Note">A caution on this row; null when there is none.</param>
public sealed record LineRow(
    IReadOnlyList<SeasonPhase> Phases,
    IReadOnlyList<int> Months,
    string? ColonyClass,
    Figure? Watch,
    Figure? Act,
    string? WatchMeans,
    string? ActMeans,
    string? Note)
{
    /// <summary>Whether the row speaks of that time: every list that is not empty must hold it.</summary>
    /// <param name="phase">The colony's phase.</param>
    /// <param name="month">Calendar month, 1 to 12, in the hemisphere of the policy.</param>
    public bool Covers(SeasonPhase phase, int month) =>
        (Phases.Count == 0 || Phases.Contains(phase)) && (Months.Count == 0 || Months.Contains(month));

    /// <summary>Where a bare level falls: the published table read as it is printed. A judgement needs the count's uncertainty as well.</summary>
    /// <param name="level">A level in the unit of the policy's scale.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="level"/> is negative or not finite.</exception>
    public LineBand BandOf(double level)
    {
        if (!double.IsFinite(level) || level < 0)
            throw new ArgumentOutOfRangeException(nameof(level), level, "A level is a finite number, 0 or more, on the scale of the policy.");
        if (Act is { } act && level > act.Value)
            return LineBand.Above;
        return Watch is { } watch && level >= watch.Value ? LineBand.Between : LineBand.Below;
    }
}
