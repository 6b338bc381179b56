using Foundress.Science;
using Foundress.Science.Judging;

namespace Foundress.Knowledge;

/// <summary>A selectable set of lines (thresholds), as one source or custom of the trade gives them, on one scale.</summary>
/// <param name="Id">Kebab-case name.</param>
/// <param name="Title">Name shown to people.</param>
/// <param name="Region">Where it was set or is used.</param>
/// <param name="Hemisphere">The hemisphere its calendar months are meant in.</param>
/// <param name="ScaleId">The scale its lines were set on.</param>
/// <param name="AlsoUsedOn">Other scales of the same unit on which the trade uses the same lines as they stand, with no correction for recovery. Usually empty.</param>
/// <param name="Rows">The lines. No two rows cover the same time and colony class.</param>
/// <param name="Notes">Cautions on the whole policy.</param>
public sealed record LinePolicy(
    string Id,
    string Title,
    string Region,
    Hemisphere Hemisphere,
    string ScaleId,
    IReadOnlyList<string> AlsoUsedOn,
    IReadOnlyList<LineRow> Rows,
    IReadOnlyList<string> Notes) : IHasId
{
    /// <summary>Whether counts on that scale may be held against these lines.</summary>
    public bool AppliesTo(string scaleId) => ScaleId == scaleId || AlsoUsedOn.Contains(scaleId);

    /// <summary>The row for a colony at a time. A row that names phases must name this one; a row that names months must name this one.</summary>
    /// <param name="phase">The colony's phase.</param>
    /// <param name="month">Calendar month, 1 to 12, in the hemisphere of the policy.</param>
    /// <param name="colonyClass">Class of colony; rows of that class come first, then rows for every colony. Null: only rows for every colony.</param>
    /// <returns>Null when no line was published for then: say so, and do not borrow another row's.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="month"/> is not 1 to 12.</exception>
    public LineRow? For(SeasonPhase phase, int month, string? colonyClass = null)
    {
        if (month is < 1 or > 12)
            throw new ArgumentOutOfRangeException(nameof(month), month, "A month is a number from 1 (January) to 12 (December).");
        var general = default(LineRow);
        foreach (var row in Rows)
        {
            if (!row.Covers(phase, month))
                continue;
            if (row.ColonyClass is null)
                general ??= row;
            else if (row.ColonyClass == colonyClass)
                return row;
        }

        return general;
    }

    /// <summary>The row for a colony at a site in either hemisphere: where site and policy lie in different ones, the month is moved by six.</summary>
    /// <param name="phase">The colony's phase.</param>
    /// <param name="month">Calendar month at the site, 1 to 12.</param>
    /// <param name="site">The site's hemisphere.</param>
    /// <param name="colonyClass">As in <see cref="For(SeasonPhase, int, string?)"/>.</param>
    /// <returns>As in <see cref="For(SeasonPhase, int, string?)"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="month"/> is not 1 to 12.</exception>
    public LineRow? For(SeasonPhase phase, int month, Hemisphere site, string? colonyClass = null) =>
        For(phase, site == Hemisphere || month is < 1 or > 12 ? month : ((month + 5) % 12) + 1, colonyClass);
}
