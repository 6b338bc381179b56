using Foundress.Book.Forecasts;

namespace Foundress.Book.Planning;

/// <summary>Gathers the courses of all colonies under one plan into the fan of any one of them. They may be added side by side.</summary>
internal sealed class PlanFan(DateOnly today, int days, int step)
{
    // So many courses of each colony are enough for the quantiles of all.
    private const int Each = 160;

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

    internal IReadOnlyList<FanPoint> Points(double recovery) =>
        [.. _loads.Select((loads, day) => FanQuantiles.Point(today.AddDays(day * step), loads, recovery))];
}
