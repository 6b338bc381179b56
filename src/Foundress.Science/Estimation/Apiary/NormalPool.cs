namespace Foundress.Science.Estimation;

/// <summary>
/// Several unknown numbers that are normal around a common centre with a common spread: what the likelihoods of all say about
/// centre and spread, and what the others say about each. The likelihoods are given on evenly spaced rows; centre and
/// spread are averaged over a fixed number of nodes.
/// </summary>
internal sealed class NormalPool
{
    private const int CentreNodes = 32;
    private const double Drop = 16d;

    private readonly LikelihoodRow[] _rows;
    private readonly Prior _prior;
    private readonly double[] _centres = new double[SpreadRule.Count * CentreNodes];
    private readonly double[] _widths = new double[SpreadRule.Count * CentreNodes];
    private readonly double[] _logJoint = new double[SpreadRule.Count * CentreNodes];
    private readonly double[][] _logOwn;

    public NormalPool(LikelihoodRow[] rows, Prior prior, double start)
    {
        (_rows, _prior) = (rows, prior);
        double unit = prior.SpreadScale;
        Rule = SpreadRule.Find(
            spread =>
            {
                double width = spread;
                start = MeanPeak.Find(m => LogJoint(m, width), start, 0.25 * unit, prior.Lowest, prior.Highest);
                return LogJoint(start, spread) - (0.5 * spread * spread / unit / unit);
            },
            0.02 * unit, 4.5 * unit);

        _logOwn = new double[rows.Length][];
        for (int i = 0; i < rows.Length; i++)
            _logOwn[i] = new double[_centres.Length];
        for (int s = 0; s < SpreadRule.Count; s++)
        {
            double spread = Rule.Nodes[s];
            start = MeanPeak.Find(m => LogJoint(m, spread), start, 0.25 * unit, prior.Lowest, prior.Highest);
            double from = MeanPeak.Edge(m => LogJoint(m, spread), start, -1d, Drop, 0.05 * unit, prior.Lowest, prior.Highest);
            double to = MeanPeak.Edge(m => LogJoint(m, spread), start, 1d, Drop, 0.05 * unit, prior.Lowest, prior.Highest);
            double step = (to - from) / (CentreNodes - 1);

            // Closer together than the nodes of the centre, the numbers would fall between them.
            double width = Math.Max(spread, 0.6 * step);
            for (int j = 0; j < CentreNodes; j++)
            {
                int node = (s * CentreNodes) + j;
                _centres[node] = from + (j * step);
                _widths[node] = width;
                double z = (_centres[node] - prior.Centre) / prior.CentreSpread;
                double own = spread / unit;
                double sum = (-0.5 * ((z * z) + (own * own))) + Math.Log(step * Rule.Weights[s]);
                for (int i = 0; i < rows.Length; i++)
                    sum += _logOwn[i][node] = rows[i].LogAverage(_centres[node], width);
                _logJoint[node] = sum;
            }
        }

        double top = double.NegativeInfinity;
        foreach (double value in _logJoint)
            top = Math.Max(top, value);
        Weights = new double[_logJoint.Length];
        double total = 0d;
        for (int node = 0; node < Weights.Length; node++)
            total += Weights[node] = Math.Exp(_logJoint[node] - top);
        for (int node = 0; node < Weights.Length; node++)
            Weights[node] /= total;
        LogEvidence = top + Math.Log(total);
    }

    /// <summary>Nodes of the spread.</summary>
    public SpreadRule Rule { get; }

    /// <summary>Posterior chance of each node of centre and spread; the nodes of one spread follow each other.</summary>
    public double[] Weights { get; }

    /// <summary>ln of the prior-averaged likelihood of all numbers, up to a constant of the prior.</summary>
    public double LogEvidence { get; }

    /// <summary>Number of nodes of the centre for each spread.</summary>
    public static int Centres => CentreNodes;

    /// <summary>Centre at a node.</summary>
    public double Centre(int node) => _centres[node];

    /// <summary>Spread at a node, as used.</summary>
    public double Width(int node) => _widths[node];

    /// <summary>
    /// What all numbers but one say about that one, up to a constant factor: a normal mixture with logarithmic weights;
    /// parts that cannot matter are left out.
    /// </summary>
    public (double[] LogWeights, double[] Centres, double[] Widths) Without(int item)
    {
        double top = double.NegativeInfinity;
        for (int node = 0; node < Weights.Length; node++)
            top = Math.Max(top, _logJoint[node] - _logOwn[item][node]);
        var kept = new List<int>();
        for (int node = 0; node < Weights.Length; node++)
        {
            // Dropped only when it matters neither before nor after the own likelihood comes in.
            if (_logJoint[node] - _logOwn[item][node] > top - 14d || Weights[node] > 1e-7)
                kept.Add(node);
        }

        return (
            [.. kept.Select(node => _logJoint[node] - _logOwn[item][node])],
            [.. kept.Select(node => _centres[node])],
            [.. kept.Select(node => _widths[node])]);
    }

    private double LogJoint(double centre, double spread)
    {
        double z = (centre - _prior.Centre) / _prior.CentreSpread;
        double sum = -0.5 * z * z;
        foreach (LikelihoodRow row in _rows)
            sum += row.LogAverage(centre, spread);
        return sum;
    }

    /// <summary>Normal prior of the centre, half-normal prior of the spread.</summary>
    internal readonly record struct Prior(double Centre, double CentreSpread, double SpreadScale, double Lowest, double Highest);
}
