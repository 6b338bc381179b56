namespace Foundress.Reports.Drawing;

/// <summary>
/// Moves marks apart that would lie on each other: each keeps its place in the order, neighbours keep their gap, and the
/// sum of squared moves is the smallest possible (isotonic regression by pooling adjacent violators; Barlow et al. 1972,
/// from memory). No randomness: the same marks always land in the same places.
/// </summary>
internal static class Spread
{
    /// <summary>Moves sorted places apart.</summary>
    /// <param name="places">Wanted places, ascending; replaced by the places given.</param>
    /// <param name="gaps">For each place the least distance to the one before it; the first is not used.</param>
    /// <param name="least">No place lies below this.</param>
    /// <param name="most">No place lies above this.</param>
    /// <remarks>When the marks do not fit between the ends, all gaps shrink alike.</remarks>
    public static void Apart(Span<double> places, ReadOnlySpan<double> gaps, double least, double most)
    {
        if (places.Length == 0)
            return;
        var total = 0d;
        for (var i = 1; i < gaps.Length; i++)
            total += gaps[i];
        var shrink = total > most - least ? (most - least) / total : 1d;

        // With the gaps taken off, "at least a gap apart" becomes "not descending".
        var before = new double[places.Length];
        for (var i = 1; i < places.Length; i++)
            before[i] = before[i - 1] + gaps[i] * shrink;
        var mean = new double[places.Length];
        var size = new int[places.Length];
        var blocks = 0;
        for (var i = 0; i < places.Length; i++)
        {
            mean[blocks] = places[i] - before[i];
            size[blocks++] = 1;
            while (blocks > 1 && mean[blocks - 2] > mean[blocks - 1])
            {
                var both = size[blocks - 2] + size[blocks - 1];
                mean[blocks - 2] = (mean[blocks - 2] * size[blocks - 2] + mean[blocks - 1] * size[blocks - 1]) / both;
                size[--blocks - 1] = both;
            }
        }

        var at = 0;
        for (var block = 0; block < blocks; block++)
        {
            for (var i = 0; i < size[block]; i++, at++)
                places[at] = Math.Clamp(mean[block], least, Math.Max(least, most - before[^1])) + before[at];
        }
    }
}
