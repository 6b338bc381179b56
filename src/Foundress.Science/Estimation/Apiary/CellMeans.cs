namespace Foundress.Science.Estimation;

/// <summary>The distribution of the mean of the apiary's population: on the log scale even over each cell of the grid.</summary>
internal sealed class CellMeans : RateDistribution
{
    private const int Halvings = 60;

    private readonly ApiaryGrid _grid;

    public CellMeans(ApiaryGrid grid)
    {
        _grid = grid;
        for (int cell = 0; cell < grid.Cells; cell++)
        {
            double half = 0.5 * grid.Widths[cell];
            Mean += grid.Weights[cell] * Math.Exp(grid.LogMeans[cell]) * (half < 1e-4 ? 1d : Math.Sinh(half) / half);
        }
    }

    /// <inheritdoc/>
    public override double Mean { get; }

    /// <inheritdoc/>
    public override double Upper(double rate) => rate > 0d ? UpperAt(Math.Log(rate)) : 1d;

    /// <inheritdoc/>
    public override double Quantile(double p)
    {
        double low = MeanPeak.Lowest - 1d;
        double high = MeanPeak.Highest + 1d;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = 0.5 * (low + high);
            if (UpperAt(middle) > 1d - p)
                low = middle;
            else
                high = middle;
        }

        return Math.Exp(0.5 * (low + high));
    }

    private double UpperAt(double logRate)
    {
        double sum = 0d;
        for (int cell = 0; cell < _grid.Cells; cell++)
            sum += _grid.Weights[cell] * Math.Clamp(((_grid.LogMeans[cell] - logRate) / _grid.Widths[cell]) + 0.5, 0d, 1d);
        return Math.Min(1d, sum);
    }
}
