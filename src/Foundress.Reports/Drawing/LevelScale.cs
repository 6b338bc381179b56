namespace Foundress.Reports.Drawing;

/// <summary>
/// Where a level stands between the bottom and the top of a picture. The scale is log(1 + level): it starts at 0 and
/// spreads the low levels at which decisions are taken, so that 1, 2, 3, 5, 10 and 20 can all be told apart. It is the same
/// for every apiary, so that pictures can be laid side by side.
/// </summary>
/// <param name="Zero">Coordinate of level 0.</param>
/// <param name="Top">Coordinate of <see cref="Highest"/>.</param>
internal readonly record struct LevelScale(double Zero, double Top)
{
    /// <summary>The highest level drawn to scale, in mites per 100 bees; above it a mark is clipped and says so.</summary>
    public const double Highest = 20d;

    private static readonly double Span = Math.Log(1d + Highest);

    /// <summary>The labelled levels.</summary>
    public static ReadOnlySpan<double> Ticks => [0, 1, 2, 3, 5, 10, 20];

    /// <summary>The coordinate of a level, at most that of <see cref="Highest"/>.</summary>
    public double At(double level) => Zero + (Top - Zero) * Math.Log(1d + Math.Clamp(level, 0d, Highest)) / Span;
}
