namespace Foundress.Science.Numerics;

/// <summary>Finds where a probability tail has a given size, to the last digits of the tail's own accuracy.</summary>
internal static class TailSolver
{
    private const int MostSteps = 200;

    /// <summary>A tail at a point and how fast its logarithm changes there.</summary>
    /// <param name="Tail">The tail, 0 to 1.</param>
    /// <param name="LogSlope">Derivative of ln tail; negative for an upper tail.</param>
    internal readonly record struct Reading(double Tail, double LogSlope);

    /// <summary>
    /// Solves ln tail(u) = ln target by Newton's method kept inside a shrinking bracket: the logarithm of a log-concave tail
    /// is close to straight, so few steps are needed, and halving the bracket takes over where a tail underflows.
    /// </summary>
    /// <param name="read">The tail at u: increasing in u when <paramref name="increasing"/>, else decreasing.</param>
    /// <param name="target">The wanted tail, above 0 and below 1.</param>
    /// <param name="increasing">Which way the tail runs.</param>
    /// <param name="start">A first guess.</param>
    /// <param name="low">A point below the answer.</param>
    /// <param name="high">A point above the answer.</param>
    public static double Solve(Func<double, Reading> read, double target, bool increasing, double start, double low, double high)
    {
        double logTarget = Math.Log(target);
        double u = start > low && start < high ? start : 0.5 * (low + high);
        for (int step = 0; step < MostSteps; step++)
        {
            Reading reading = read(u);
            double gap = Math.Log(reading.Tail) - logTarget;
            if (gap == 0d)
                return u;
            if (gap > 0d == increasing)
                high = u;
            else
                low = u;

            double move = -gap / reading.LogSlope;
            double next = u + move;
            if (Math.Abs(move) <= 1e-15 * (1d + Math.Abs(u)))
                return next;
            if (!(next > low && next < high))
            {
                next = 0.5 * (low + high);
                if (next <= low || next >= high)
                    return next;
            }

            u = next;
        }

        return u;
    }
}
