using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>
/// A rate with a gamma distribution of known shape whose exposure (bees times recovery) is known, or lognormal: then
/// the tails are averaged over the exposure on a fixed grid.
/// </summary>
internal sealed class GammaMixture : RateDistribution
{
    private readonly double _shape;
    private readonly double _exposure;
    private readonly double _logSpread;
    private readonly NormalGrid? _grid;

    /// <summary>A mixture over a lognormal exposure.</summary>
    /// <param name="shape">Shape of the gamma distribution.</param>
    /// <param name="exposure">Median exposure.</param>
    /// <param name="logSpread">Standard deviation of its logarithm; 0 for a known exposure.</param>
    public GammaMixture(double shape, double exposure, double logSpread)
    {
        (_shape, _exposure, _logSpread) = (shape, exposure, logSpread);
        _grid = logSpread > 0d ? NormalGrid.For(logSpread * Math.Sqrt(shape)) : null;
    }

    /// <inheritdoc/>
    public override double Mean => _shape / _exposure * Math.Exp(0.5 * _logSpread * _logSpread);

    /// <inheritdoc/>
    public override double Upper(double rate)
    {
        if (_grid is null)
            return GammaFunctions.Upper(_shape, rate * _exposure);
        double sum = 0d;
        for (int i = 0; i < _grid.Count; i++)
            sum += _grid.Weight(i) * GammaFunctions.Upper(_shape, rate * _exposure * Math.Exp(_logSpread * _grid.Node(i)));
        return Math.Min(1d, sum);
    }

    /// <inheritdoc/>
    public override double Quantile(double p)
    {
        if (_grid is null)
            return GammaFunctions.InverseLower(_shape, p) / _exposure;

        bool lower = p <= 0.5;
        double u = TailSolver.Solve(
            u => lower ? ReadLower(u) : ReadUpper(u), lower ? p : 1d - p, lower,
            Math.Log(GammaFunctions.InverseLower(_shape, p) / _exposure), -746d, 709d);
        return Math.Exp(u);
    }

    private TailSolver.Reading ReadLower(double u)
    {
        double tail = 0d;
        double slope = 0d;
        for (int i = 0; i < _grid!.Count; i++)
        {
            double x = _exposure * Math.Exp(u + (_logSpread * _grid.Node(i)));
            tail += _grid.Weight(i) * GammaFunctions.Lower(_shape, x);
            slope += _grid.Weight(i) * _shape * SaddlePoint.PoissonMass(_shape, x);
        }

        return new(tail, slope / tail);
    }

    private TailSolver.Reading ReadUpper(double u)
    {
        double tail = 0d;
        double slope = 0d;
        for (int i = 0; i < _grid!.Count; i++)
        {
            double x = _exposure * Math.Exp(u + (_logSpread * _grid.Node(i)));
            tail += _grid.Weight(i) * GammaFunctions.Upper(_shape, x);
            slope -= _grid.Weight(i) * _shape * SaddlePoint.PoissonMass(_shape, x);
        }

        return new(tail, slope / tail);
    }
}
