using Foundress.Science;

namespace Foundress.Knowledge;

/// <summary>Mites in a colony for each mite that falls in a day, as one source gives it.</summary>
/// <param name="Id">Kebab-case name.</param>
/// <param name="Title">Whose it is and for when, shown to people.</param>
/// <param name="Hemisphere">The hemisphere its months are meant in.</param>
/// <param name="Months">Calendar months, 1 to 12; empty when the source makes no difference.</param>
/// <param name="Brood">For which colonies it was given.</param>
/// <param name="Factor">The factor, or its range.</param>
public sealed record FallFactor(string Id, string Title, Hemisphere Hemisphere, IReadOnlyList<int> Months, FallBrood Brood, Figure Factor) : IHasId
{
    /// <summary>The lowest number the source gives.</summary>
    public double Lowest => Factor.Low ?? Factor.Value;

    /// <summary>The highest number the source gives.</summary>
    public double Highest => Factor.High ?? Factor.Value;

    /// <summary>Whether the source speaks of such a colony in such a month.</summary>
    /// <param name="month">Calendar month at the site, 1 to 12.</param>
    /// <param name="site">The site's hemisphere.</param>
    /// <param name="broodless">Whether the colony has no brood.</param>
    public bool Covers(int month, Hemisphere site, bool broodless)
    {
        var there = site == Hemisphere ? month : ((month + 5) % 12) + 1;
        return (Months.Count == 0 || Months.Contains(there))
            && (Brood == FallBrood.Any || Brood == (broodless ? FallBrood.Without : FallBrood.With));
    }
}
