using Foundress.Book.Forecasts;

namespace Foundress.Book.Planning;

/// <summary>Gathers the courses of all colonies under one plan into the fan of any one of them. They may be added side by side.</summary>
internal sealed class PlanFan(DateOnly today, int days, int step)
{
    // So many courses of each colony are enough for the quantiles of all.
    private const int Each = 160;
    private static readonly double[] Chances = [0.05, 0.25, 0.5, 0.75, 0.95];

    private readonly List<float>[] _loads = [.. Enumerable.Range(0, days).Select(_ => new List<float>())];

    internal void Add(int day, ReadOnlyMemory<float> loads)
    {
        var all = loads.Span;
        var stride = Math.Max(1, all.Length / Each);
        lock (_loads[day])
        {
            for (var at = 0; at < all.Length; at += stride)
                _loads[day].Add(all[at]);
        }
    }

    internal IReadOnlyList<FanPoint> Points(double recovery)
    {
        var points = new List<FanPoint>(_loads.Length);
        for (var day = 0; day < _loads.Length; day++)
        {
            var sorted = _loads[day];
            sorted.Sort();
            double At(int chance) => 100 * recovery * Math.Min(sorted[(int)Math.Round(Chances[chance] * (sorted.Count - 1))], 1e4f);
            points.Add(new FanPoint(today.AddDays(day * step), At(0), At(1), At(2), At(3), At(4)));
        }

        return points;
    }
}
