namespace Foundress.Science.Estimation;

/// <summary>
/// The joint posterior of an apiary's mean level and spread on a fixed number of nodes: for each spread an evenly spaced row of
/// means, placed where the density is. Between the nodes of a row the logarithm of the density is interpolated, which cuts
/// each step into cells; a cell stands for its whole width, so what depends sharply on the mean is still smooth.
/// </summary>
internal sealed class ApiaryGrid
{
    /// <summary>Nodes in a row of means.</summary>
    private const int Row = 20;

    /// <summary>Cells in a step of a row.</summary>
    private const int Parts = 4;

    private const double Drop = 18d;
    private const double Negligible = 1e-9;
    private static readonly double[] SixPoint = Lagrange(6);
    private static readonly double[] FourPoint = Lagrange(4);

    private readonly int _colonies;
    private readonly double[] _start = new double[SpreadRule.Count];
    private readonly double[] _step = new double[SpreadRule.Count];
    private readonly double[] _logDensity = new double[SpreadRule.Count * Row];
    private readonly double[] _logMean;
    private readonly double[] _logVariance;
    private readonly int[] _cell;

    /// <summary>Computes the grid.</summary>
    /// <param name="likelihood">The likelihood of the colonies.</param>
    /// <param name="rule">Nodes of the spread.</param>
    /// <param name="logPrior">ln prior density at the number of a spread's node and the logarithm of the mean per bee.</param>
    /// <param name="start">A guess of the logarithm of the mean per bee.</param>
    public ApiaryGrid(ApiaryLikelihood likelihood, SpreadRule rule, Func<int, double, double> logPrior, double start)
    {
        Rule = rule;
        _colonies = likelihood.Count;
        _logMean = new double[_colonies * SpreadRule.Count * Row];
        _logVariance = new double[_colonies * SpreadRule.Count * Row];
        double[] means = new double[_colonies];
        double[] variances = new double[_colonies];
        for (int c = 0; c < SpreadRule.Count; c++)
        {
            int node = c;
            likelihood.SetSpread(rule.Nodes[c]);
            double Density(double a) => likelihood.Log(a) + logPrior(node, a);
            start = MeanPeak.Find(Density, start, 0.25);
            double from = MeanPeak.Edge(Density, start, -1d, Drop);
            double to = MeanPeak.Edge(Density, start, 1d, Drop);
            _start[c] = from;
            _step[c] = (to - from) / (Row - 1);
            for (int j = 0; j < Row; j++)
            {
                double a = from + (j * _step[c]);
                int at = (c * Row) + j;
                _logDensity[at] = likelihood.Log(a, means, variances) + logPrior(c, a);
                for (int i = 0; i < _colonies; i++)
                {
                    _logMean[(i * SpreadRule.Count * Row) + at] = Math.Log(means[i]);
                    _logVariance[(i * SpreadRule.Count * Row) + at] = Math.Log(variances[i]);
                }
            }
        }

        (_cell, Weights, LogMeans, Widths) = MakeCells();
        SpreadWeights = new double[SpreadRule.Count];
        for (int cell = 0; cell < _cell.Length; cell++)
            SpreadWeights[SpreadNode(cell)] += Weights[cell];
    }

    /// <summary>Nodes of the spread.</summary>
    public SpreadRule Rule { get; }

    /// <summary>Number of cells.</summary>
    public int Cells => _cell.Length;

    /// <summary>Posterior chance of each cell; they add up to 1.</summary>
    public double[] Weights { get; }

    /// <summary>Logarithm of the mean per bee in the middle of each cell.</summary>
    public double[] LogMeans { get; }

    /// <summary>Width of each cell on the log scale.</summary>
    public double[] Widths { get; }

    /// <summary>Posterior chance of each node of the spread.</summary>
    public double[] SpreadWeights { get; }

    /// <summary>Number of the spread's node that a cell belongs to.</summary>
    public int SpreadNode(int cell) => _cell[cell] / (Row * Parts);

    /// <summary>Spread between colonies in a cell.</summary>
    public double Spread(int cell) => Rule.Nodes[SpreadNode(cell)];

    /// <summary>Variance on the log scale of a mean spread evenly over the width of a cell.</summary>
    public double WidthVariance(int cell) => Widths[cell] * Widths[cell] / 12d;

    /// <summary>Mean and variance of one colony's level in each cell, the width of the cell included.</summary>
    public void ColonyMoments(int colony, Span<double> means, Span<double> variances)
    {
        ReadOnlySpan<double> logMean = _logMean.AsSpan(colony * SpreadRule.Count * Row, SpreadRule.Count * Row);
        ReadOnlySpan<double> logVariance = _logVariance.AsSpan(colony * SpreadRule.Count * Row, SpreadRule.Count * Row);
        for (int cell = 0; cell < _cell.Length; cell++)
        {
            (int c, int j, int part) = Place(cell);
            int first = Math.Clamp(j - 1, 0, Row - 4);
            ReadOnlySpan<double> weights = FourPoint.AsSpan((((j - first) * Parts) + part) * 4, 4);
            int at = (c * Row) + first;
            double mean = Math.Exp(Dot(weights, logMean[at..]));
            double slope = mean * (logMean[(c * Row) + j + 1] - logMean[(c * Row) + j]) / _step[c];
            means[cell] = mean;
            variances[cell] = Math.Exp(Dot(weights, logVariance[at..])) + (slope * slope * WidthVariance(cell));
        }
    }

    /// <summary>Mean and variance, in each cell, of the sum of the levels of the sampled colonies, without the width of the cell; and how the sum's mean rises with the logarithm of the apiary's mean.</summary>
    public void SumMoments(Span<double> means, Span<double> variances, Span<double> slopes)
    {
        int nodes = SpreadRule.Count * Row;
        double[] sum = new double[nodes];
        double[] square = new double[nodes];
        for (int i = 0; i < _colonies; i++)
        {
            for (int node = 0; node < nodes; node++)
            {
                sum[node] += Math.Exp(_logMean[(i * nodes) + node]);
                square[node] += Math.Exp(_logVariance[(i * nodes) + node]);
            }
        }

        for (int node = 0; node < nodes; node++)
        {
            sum[node] = Math.Log(sum[node]);
            square[node] = Math.Log(square[node]);
        }

        for (int cell = 0; cell < _cell.Length; cell++)
        {
            (int c, int j, int part) = Place(cell);
            int first = Math.Clamp(j - 1, 0, Row - 4);
            ReadOnlySpan<double> weights = FourPoint.AsSpan((((j - first) * Parts) + part) * 4, 4);
            int at = (c * Row) + first;
            means[cell] = Math.Exp(Dot(weights, sum.AsSpan(at)));
            variances[cell] = Math.Exp(Dot(weights, square.AsSpan(at)));
            slopes[cell] = means[cell] * (sum[(c * Row) + j + 1] - sum[(c * Row) + j]) / _step[c];
        }
    }

    private static double Dot(ReadOnlySpan<double> weights, ReadOnlySpan<double> values)
    {
        double sum = 0d;
        for (int i = 0; i < weights.Length; i++)
            sum += weights[i] * values[i];
        return sum;
    }

    // Weights of the polynomial through `points` neighbouring nodes, at each part of each step between them.
    private static double[] Lagrange(int points)
    {
        double[] weights = new double[(points - 1) * Parts * points];
        for (int place = 0; place < (points - 1) * Parts; place++)
        {
            double t = (place + 0.5) / Parts;
            for (int i = 0; i < points; i++)
            {
                double product = 1d;
                for (int other = 0; other < points; other++)
                {
                    if (other != i)
                        product *= (t - other) / (i - other);
                }

                weights[(place * points) + i] = product;
            }
        }

        return weights;
    }

    private (int Spread, int Step, int Part) Place(int cell)
    {
        int place = _cell[cell];
        return (place / (Row * Parts), place / Parts % Row, place % Parts);
    }

    private (int[] Cell, double[] Weights, double[] LogMeans, double[] Widths) MakeCells()
    {
        double top = double.NegativeInfinity;
        foreach (double value in _logDensity)
            top = Math.Max(top, value);

        double[] mass = new double[SpreadRule.Count * Row * Parts];
        double total = 0d;
        for (int c = 0; c < SpreadRule.Count; c++)
        {
            double size = Rule.Weights[c] * _step[c] / Parts;
            for (int j = 0; j < Row - 1; j++)
            {
                int first = Math.Clamp(j - 2, 0, Row - 6);
                for (int part = 0; part < Parts; part++)
                {
                    ReadOnlySpan<double> weights = SixPoint.AsSpan((((j - first) * Parts) + part) * 6, 6);
                    double value = Dot(weights, _logDensity.AsSpan((c * Row) + first)) - top;
                    total += mass[(((c * Row) + j) * Parts) + part] = size * Math.Exp(value);
                }
            }
        }

        var kept = new List<int>(mass.Length);
        double keptTotal = 0d;
        for (int place = 0; place < mass.Length; place++)
        {
            if (mass[place] > Negligible * total)
            {
                kept.Add(place);
                keptTotal += mass[place];
            }
        }

        int[] cell = [.. kept];
        double[] chances = new double[cell.Length];
        double[] logMeans = new double[cell.Length];
        double[] widths = new double[cell.Length];
        for (int i = 0; i < cell.Length; i++)
        {
            int c = cell[i] / (Row * Parts);
            chances[i] = mass[cell[i]] / keptTotal;
            widths[i] = _step[c] / Parts;
            logMeans[i] = _start[c] + (((cell[i] % (Row * Parts)) + 0.5) * widths[i]);
        }

        return (cell, chances, logMeans, widths);
    }
}
