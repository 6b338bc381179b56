namespace Foundress.Science.Estimation;

/// <summary>Finds, roughly and always in the same way, the top and the edges of a density of one peak on a line.</summary>
internal static class MeanPeak
{
    /// <summary>Lowest and highest logarithm of a mean per bee that is looked at: 1e-9 mites per 100 bees to 15,000.</summary>
    public const double Lowest = -25d;

    /// <summary>See <see cref="Lowest"/>.</summary>
    public const double Highest = 5d;

    /// <summary>Walks uphill in steps that double while they gain and shrink when they do not; within about a twentieth of the first step of the top.</summary>
    public static double Find(Func<double, double> logDensity, double start, double step, double lowest = Lowest, double highest = Highest)
    {
        double at = Math.Clamp(start, lowest, highest);
        double here = logDensity(at);
        for (double finest = step / 25d; step > finest;)
        {
            bool moved = false;
            foreach (double direction in (ReadOnlySpan<double>)[1d, -1d])
            {
                double stride = step;
                for (double next = at + (direction * stride); next >= lowest && next <= highest; next = at + (direction * stride))
                {
                    double there = logDensity(next);
                    if (there <= here)
                        break;
                    (at, here) = (next, there);
                    stride *= 1.6;
                    moved = true;
                }

                if (moved)
                    break;
            }

            step *= 0.3;
        }

        return at;
    }

    /// <summary>A point on one side of the top where the density has dropped by about <paramref name="drop"/> (up to a tenth more).</summary>
    public static double Edge(Func<double, double> logDensity, double top, double direction, double drop, double step = 0.05, double lowest = Lowest, double highest = Highest)
    {
        double wanted = logDensity(top) - drop;
        double inside = 0d;
        double outside = step;
        while (logDensity(top + (direction * outside)) > wanted)
        {
            inside = outside;
            outside *= 1.7;
            double limit = direction > 0d ? highest - top : top - lowest;
            if (outside >= limit)
                return top + (direction * Math.Max(limit, step));
        }

        for (int halving = 0; halving < 4; halving++)
        {
            double middle = 0.5 * (inside + outside);
            if (logDensity(top + (direction * middle)) > wanted)
                inside = middle;
            else
                outside = middle;
        }

        return top + (direction * outside);
    }
}
