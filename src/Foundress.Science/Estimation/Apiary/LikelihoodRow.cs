namespace Foundress.Science.Estimation;

/// <summary>ln likelihood of one number on an evenly spaced row that holds all of it that matters.</summary>
internal sealed class LikelihoodRow(double start, double step, double[] logLikelihood)
{
    /// <summary>ln of the likelihood averaged over a normal distribution, the width of a step added to its spread.</summary>
    public double LogAverage(double centre, double spread)
    {
        double variance = (spread * spread) + (step * step / 12d);
        double half = 0.5 / variance;
        double top = double.NegativeInfinity;
        for (int j = 0; j < logLikelihood.Length; j++)
        {
            double gap = start + (j * step) - centre;
            top = Math.Max(top, logLikelihood[j] - (half * gap * gap));
        }

        double sum = 0d;
        for (int j = 0; j < logLikelihood.Length; j++)
        {
            double gap = start + (j * step) - centre;
            double below = logLikelihood[j] - (half * gap * gap) - top;
            if (below > -40d)
                sum += Math.Exp(below);
        }

        return top + Math.Log(sum * step) - (0.5 * Math.Log(2d * Math.PI * variance));
    }

    /// <summary>A row for a log likelihood: 24 nodes around its top, where a wide normal bound keeps a likelihood without information finite.</summary>
    public static LikelihoodRow Of(Func<double, double> logLikelihood, double centre, double bound, double start, double lowest, double highest)
    {
        const int Nodes = 24;
        double Bounded(double x) => logLikelihood(x) - (0.5 * (x - centre) * (x - centre) / bound / bound);
        double top = MeanPeak.Find(Bounded, start, 0.1 * bound, lowest, highest);
        double from = MeanPeak.Edge(Bounded, top, -1d, 18d, 0.02 * bound, lowest, highest);
        double to = MeanPeak.Edge(Bounded, top, 1d, 18d, 0.02 * bound, lowest, highest);
        double step = (to - from) / (Nodes - 1);
        double[] values = new double[Nodes];
        for (int j = 0; j < Nodes; j++)
            values[j] = logLikelihood(from + (j * step));
        return new(from, step, values);
    }
}
