namespace Foundress.Science.Sampling;

/// <summary>One row of the chart for the clipboard: what the mites of all jars so far decide.</summary>
/// <param name="Jars">Jars taken.</param>
/// <param name="WaitUpTo">Stop and wait with at most so many mites; none while even no mites cannot decide.</param>
/// <param name="ActFrom">Stop and act with at least so many mites.</param>
public readonly record struct SequentialLine(int Jars, int? WaitUpTo, int ActFrom)
{
    /// <summary>What a number of mites decides.</summary>
    /// <param name="mites">Mites of all jars so far, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="mites"/> is negative.</exception>
    public SequentialDecision Decide(int mites)
    {
        if (mites < 0)
            throw new ArgumentOutOfRangeException(nameof(mites), mites, "The number of mites counted is 0 or more.");
        if (mites >= ActFrom)
            return SequentialDecision.Act;
        return mites <= WaitUpTo ? SequentialDecision.Wait : SequentialDecision.GoOn;
    }
}
