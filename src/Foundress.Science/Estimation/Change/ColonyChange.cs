using Foundress.Science.Numerics;

namespace Foundress.Science.Estimation;

/// <summary>The ratio of two gamma posteriors whose exposures are known or lognormal.</summary>
internal sealed class ColonyChange : LevelChange
{
    private readonly double _earlierShape;
    private readonly double _laterShape;
    private readonly double _exposureRatio;
    private readonly double _logSpread;
    private readonly NormalGrid? _grid;

    public ColonyChange(PooledExposure earlier, PooledExposure later, double days)
        : base(days)
    {
        const double JeffreysShape = 0.5;
        _earlierShape = earlier.Mites + JeffreysShape;
        _laterShape = later.Mites + JeffreysShape;

        // Given the mites the exposure is lognormal again, its density turned by exposure^-½ as in the posterior of one jar.
        double earlierExposure = earlier.Median * Math.Exp(-JeffreysShape * earlier.LogSpread * earlier.LogSpread);
        double laterExposure = later.Median * Math.Exp(-JeffreysShape * later.LogSpread * later.LogSpread);
        _exposureRatio = laterExposure / earlierExposure;
        _logSpread = Math.Sqrt((earlier.LogSpread * earlier.LogSpread) + (later.LogSpread * later.LogSpread));
        double smallest = Math.Min(_earlierShape, _laterShape);
        _grid = _logSpread > 0d ? NormalGrid.For(_logSpread * Math.Sqrt(smallest)) : null;
    }

    private protected override double Guess => Math.Log(_laterShape / _earlierShape / _exposureRatio);

    private protected override double Upper(double multiple)
    {
        if (_grid is null)
            return UpperAt(multiple * _exposureRatio);
        double sum = 0d;
        for (int i = 0; i < _grid.Count; i++)
            sum += _grid.Weight(i) * UpperAt(multiple * _exposureRatio * Math.Exp(_logSpread * _grid.Node(i)));
        return sum;
    }

    // G1 / G0 over r, for independent gamma variables: a beta variable over r / (1 + r).
    private double UpperAt(double ratio) => ratio <= 1d
        ? BetaFunctions.Upper(_laterShape, _earlierShape, ratio / (1d + ratio))
        : BetaFunctions.Lower(_earlierShape, _laterShape, 1d / (1d + ratio));
}
