namespace Foundress.Science.Estimation;

/// <summary>The chances that 0, 1, 2, ... colonies are over a line. Immutable.</summary>
public sealed class ColonyCount
{
    private readonly double[] _chances;

    internal ColonyCount(double[] chances) => _chances = chances;

    /// <summary>The number of colonies that could be over the line at most.</summary>
    public int Colonies => _chances.Length - 1;

    /// <summary>The expected number.</summary>
    public double Mean
    {
        get
        {
            double sum = 0d;
            for (int n = 1; n < _chances.Length; n++)
                sum += n * _chances[n];
            return sum;
        }
    }

    /// <summary>The chance of exactly this many.</summary>
    /// <param name="colonies">0 to <see cref="Colonies"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="colonies"/> is out of its range.</exception>
    public Chance ChanceOf(int colonies)
    {
        Check(colonies);
        return Chance.Of(Math.Clamp(_chances[colonies], 0d, 1d));
    }

    /// <summary>The chance of this many or more.</summary>
    /// <param name="colonies">0 to <see cref="Colonies"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="colonies"/> is out of its range.</exception>
    public Chance ChanceOfAtLeast(int colonies)
    {
        Check(colonies);
        double sum = 0d;
        for (int n = _chances.Length - 1; n >= colonies; n--)
            sum += _chances[n];
        return Chance.Of(Math.Clamp(sum, 0d, 1d));
    }

    /// <summary>The smallest number that is not exceeded with at least a given chance.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="p"/> is out of its range.</exception>
    public int Quantile(double p)
    {
        if (p is not (> 0d and < 1d))
            throw new ArgumentOutOfRangeException(nameof(p), p, "A quantile is asked for a chance above 0 and below 1.");
        double sum = 0d;
        for (int n = 0; n < _chances.Length; n++)
        {
            sum += _chances[n];
            if (sum >= p)
                return n;
        }

        return Colonies;
    }

    private void Check(int colonies)
    {
        if (colonies < 0 || colonies > Colonies)
            throw new ArgumentOutOfRangeException(nameof(colonies), colonies, $"The number of colonies lies between 0 and {Colonies}.");
    }
}
