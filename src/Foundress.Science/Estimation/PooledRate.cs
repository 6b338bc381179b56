using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>
/// The rate behind several jars, at least one of them with an uncertain number of bees. The density of u = ln rate is
/// the product of the jars' likelihoods, each averaged over its own bees, and is tabulated once on panels around its peak.
/// Every factor is log-concave in u, so there is one peak and the tails only fall.
/// </summary>
internal sealed class PooledRate : RateDistribution
{
    private const double LeftDrop = 40d;
    private const double RightDrop = 80d;
    private static readonly GaussLegendre Rule = new(16);

    private readonly double _totalMites;
    private readonly double _countedExposure;
    private readonly UncertainJar[] _uncertain;
    private readonly double _peak;
    private readonly double _start;
    private readonly double _width;
    private readonly double[] _massFrom;
    private readonly double[] _massTo;
    private readonly double _total;

    /// <summary>The rate behind some jars.</summary>
    public PooledRate(ReadOnlySpan<JarCount> jars)
    {
        var uncertain = new List<UncertainJar>();
        double exposure = 0d;
        foreach (JarCount jar in jars)
        {
            _totalMites += jar.Mites;
            exposure += jar.Exposure;
            if (jar.Bees.LogSpread > 0d)
                uncertain.Add(new(jar));
            else
                _countedExposure += jar.Exposure;
        }

        _uncertain = [.. uncertain];
        _width = 1d / Math.Sqrt(_totalMites + 2d);
        double top = FindPeak(Math.Log((_totalMites + 0.5) / exposure));
        _peak = LogDensity(top);

        int left = 1;
        while (LogDensity(top - (left * _width)) > _peak - LeftDrop)
            left++;
        int right = 1;
        while (LogDensity(top + (right * _width)) > _peak - RightDrop)
            right++;

        _start = top - (left * _width);
        int panels = left + right;
        _massTo = new double[panels + 1];
        _massFrom = new double[panels + 1];
        double rateSum = 0d;

        // Left of the table the density is a plain power of the rate.
        _massTo[0] = LeftRemainder(_start);
        for (int panel = 0; panel < panels; panel++)
        {
            (double mass, double moment) = Integrate(Edge(panel), Edge(panel + 1));
            _massTo[panel + 1] = _massTo[panel] + mass;
            _massFrom[panel] = mass;
            rateSum += moment;
        }

        for (int panel = panels - 1; panel >= 0; panel--)
            _massFrom[panel] += _massFrom[panel + 1];
        _total = _massTo[0] + _massFrom[0];
        Mean = rateSum / _total;
    }

    /// <inheritdoc/>
    public override double Mean { get; }

    /// <inheritdoc/>
    public override double Upper(double rate) => rate > 0d ? UpperAt(Math.Log(rate)) : 1d;

    /// <inheritdoc/>
    public override double Quantile(double p)
    {
        bool lower = p <= 0.5;
        double u = TailSolver.Solve(
            u =>
            {
                double tail = lower ? LowerAt(u) : UpperAt(u);
                double density = Math.Exp(LogDensity(u) - _peak) / _total;
                return new(tail, (lower ? density : -density) / tail);
            },
            lower ? p : 1d - p, lower, Math.Log(Mean), -746d, 709d);
        return Math.Exp(u);
    }

    private double Edge(int panel) => _start + (panel * _width);

    private double LowerAt(double u)
    {
        if (u <= _start)
            return LeftRemainder(u) / _total;
        int panel = (int)((u - _start) / _width);
        return panel >= _massTo.Length - 1 ? 1d : (_massTo[panel] + Integrate(Edge(panel), u).Mass) / _total;
    }

    private double UpperAt(double u)
    {
        if (u <= _start)
            return 1d - (LeftRemainder(u) / _total);
        int panel = (int)((u - _start) / _width);
        return panel >= _massFrom.Length - 1 ? 0d : Math.Min(1d, (_massFrom[panel + 1] + Integrate(u, Edge(panel + 1)).Mass) / _total);
    }

    private double LeftRemainder(double u) => Math.Exp(LogDensity(u) - _peak) / (_totalMites + 0.5);

    private (double Mass, double Moment) Integrate(double from, double to)
    {
        double centre = 0.5 * (from + to);
        double half = 0.5 * (to - from);
        double mass = 0d;
        double moment = 0d;
        for (int i = 0; i < Rule.Nodes.Length; i++)
        {
            double u = centre + (half * Rule.Nodes[i]);
            double part = Rule.Weights[i] * Math.Exp(LogDensity(u) - _peak);
            mass += part;
            moment += part * Math.Exp(u);
        }

        return (mass * half, moment * half);
    }

    // Steps of a panel's width uphill; the true top is within one panel of the answer, close enough to centre the table.
    private double FindPeak(double u)
    {
        double here = LogDensity(u);
        foreach (double step in (ReadOnlySpan<double>)[_width, -_width])
        {
            for (double next = LogDensity(u + step); next > here; next = LogDensity(u + step))
                (u, here) = (u + step, next);
        }

        return u;
    }

    // Jeffreys' prior is rate^-½; the step from a rate to its logarithm adds 1 to the power.
    private double LogDensity(double u)
    {
        double rate = Math.Exp(u);
        double sum = ((_totalMites + 0.5) * u) - (_countedExposure * rate);
        foreach (UncertainJar jar in _uncertain)
            sum += jar.LogLikelihood(rate);
        return sum;
    }

    /// <summary>One jar whose bees are uncertain, its likelihood without the factor rate^mites.</summary>
    private sealed class UncertainJar
    {
        private readonly double[] _logWeights;
        private readonly double[] _exposures;

        public UncertainJar(JarCount jar)
        {
            double spread = jar.Bees.LogSpread;
            NormalGrid grid = NormalGrid.For(spread * Math.Sqrt(jar.Mites + 1d));
            _logWeights = new double[grid.Count];
            _exposures = new double[grid.Count];
            for (int i = 0; i < grid.Count; i++)
            {
                double shift = spread * grid.Node(i);
                _logWeights[i] = Math.Log(grid.Weight(i)) + (jar.Mites * shift);
                _exposures[i] = jar.Exposure * Math.Exp(shift);
            }
        }

        public double LogLikelihood(double rate)
        {
            double most = double.NegativeInfinity;
            for (int i = 0; i < _exposures.Length; i++)
                most = Math.Max(most, _logWeights[i] - (_exposures[i] * rate));
            double sum = 0d;
            for (int i = 0; i < _exposures.Length; i++)
            {
                double below = _logWeights[i] - (_exposures[i] * rate) - most;
                if (below > -50d)
                    sum += Math.Exp(below);
            }

            return most + Math.Log(sum);
        }
    }
}
