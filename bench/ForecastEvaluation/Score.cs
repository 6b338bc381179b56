using Foundress.Science;
using Foundress.Science.Forecasting;

namespace ForecastEvaluation;

/// <summary>Coverage and CRPS of log1p(level), gathered over jars.</summary>
internal sealed class Score
{
    private readonly List<double> _crps = [];
    private int _in50;
    private int _in80;
    private int _in90;
    private int _below;

    public int Jars => _crps.Count;

    public double Crps => _crps.Average();

    public string Row => $"{100d * _in50 / Jars:F0} | {100d * _in80 / Jars:F0} | {100d * _in90 / Jars:F0} | {100d * _below / Jars:F0} | {Crps:F3}";

    public void Add(JarPrediction prediction, int mites, double bees)
    {
        double level = 100d * mites / bees;
        _in50 += Holds(prediction, 0.25, 0.75, level);
        _in80 += Holds(prediction, 0.1, 0.9, level);
        _in90 += Holds(prediction, 0.05, 0.95, level);
        _below += level < prediction.Level(Chance.Of(0.5)).Per100Bees ? 1 : 0;
        _crps.Add(CrpsOf(prediction, mites, bees));
    }

    // The integral of (F(x) - [x ≥ seen])² over x = log1p(level), exact for a distribution that jumps at whole counts.
    private static double CrpsOf(JarPrediction prediction, int mites, double bees)
    {
        double sum = 0d;
        for (int count = 0; count < 5000; count++)
        {
            double upTo = prediction.AtMost(count).Value;
            double width = double.LogP1(100d * (count + 1) / bees) - double.LogP1(100d * count / bees);
            double away = upTo - (count >= mites ? 1d : 0d);
            sum += away * away * width;
            if (count > mites && upTo > 1d - 1e-9)
                break;
        }

        return sum;
    }

    private static int Holds(JarPrediction prediction, double low, double high, double level) =>
        level >= prediction.Level(Chance.Of(low)).Per100Bees && level <= prediction.Level(Chance.Of(high)).Per100Bees ? 1 : 0;
}
