using Foundress.Science.Forecasting;

namespace Foundress.Book.Forecasts;

/// <summary>The fan of any one colony of an apiary, taken at random: the courses of all of them laid together.</summary>
internal sealed class AnyColonyFan
{
    // So many courses of each colony are enough for the quantiles of all.
    private const int Each = 200;

    private readonly DateOnly _today;
    private readonly int[] _days;
    private readonly List<float>[] _loads;

    internal AnyColonyFan(DateOnly today, int ahead, int step)
    {
        _today = today;
        _days = [.. Enumerable.Range(0, ahead).Where(day => day % step == 0 || day == ahead - 1)];
        _loads = [.. _days.Select(_ => new List<float>())];
    }

    internal void Add(ColonyOutlook outlook)
    {
        for (var i = 0; i < _days.Length && _days[i] < outlook.Days; i++)
        {
            var loads = outlook.Loads(_days[i]);
            var stride = Math.Max(1, loads.Length / Each);
            for (var at = 0; at < loads.Length; at += stride)
                _loads[i].Add(loads[at]);
        }
    }

    internal IReadOnlyList<FanPoint> Points(double recovery)
    {
        var points = new List<FanPoint>(_days.Length);
        for (var i = 0; i < _days.Length; i++)
        {
            if (_loads[i].Count > 0)
                points.Add(FanQuantiles.Point(_today.AddDays(_days[i]), _loads[i], recovery));
        }

        return points;
    }
}
