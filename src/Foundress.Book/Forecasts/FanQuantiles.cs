namespace Foundress.Book.Forecasts;

/// <summary>The point of a fan on a day from the loads of many courses.</summary>
internal static class FanQuantiles
{
    private static readonly double[] Chances = [0.05, 0.25, 0.5, 0.75, 0.95];

    /// <summary>Sorts the loads and reads the five levels of a fan.</summary>
    /// <param name="on">The day.</param>
    /// <param name="loads">Mites per adult bee, one or more; left in rising order.</param>
    /// <param name="recovery">Share of the mites that the method of the level's scale brings off.</param>
    internal static FanPoint Point(DateOnly on, List<float> loads, double recovery)
    {
        loads.Sort();
        double At(int chance) => 100 * recovery * Math.Min(loads[(int)Math.Round(Chances[chance] * (loads.Count - 1))], 1e4f);
        return new FanPoint(on, At(0), At(1), At(2), At(3), At(4));
    }
}
