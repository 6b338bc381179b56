namespace Foundress.Science.Sampling;

/// <summary>What a round that may stop early is to tell apart, how surely, and with how many jars at most.</summary>
public sealed record SequentialAim
{
    /// <summary>The most jars a round is reckoned for.</summary>
    public const int MostJarsOfAll = 500;

    /// <summary>An aim.</summary>
    /// <param name="low">A level at which to wait, above 0.</param>
    /// <param name="high">A level at which to act, above <paramref name="low"/>.</param>
    /// <param name="actsInVain">Wanted chance of acting at the low level (Wald's α), above 0 and below 0.5.</param>
    /// <param name="waitsTooLong">Wanted chance of waiting at the high level (Wald's β), above 0 and below 0.5.</param>
    /// <param name="beesPerJar">Bees in a jar, at least 1.</param>
    /// <param name="mostJars">Jars after which the round ends, 1 to <see cref="MostJarsOfAll"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public SequentialAim(MiteLevel low, MiteLevel high, double actsInVain, double waitsTooLong, int beesPerJar, int mostJars)
    {
        if (!(low.PerBee > 0d))
            throw new ArgumentOutOfRangeException(nameof(low), low, "The low level lies above 0.");
        if (high <= low)
            throw new ArgumentOutOfRangeException(nameof(high), high, $"The high level lies above the low one, {low}.");
        if (actsInVain is not (> 0d and < 0.5))
            throw new ArgumentOutOfRangeException(nameof(actsInVain), actsInVain, "The chance of acting in vain lies above 0 and below 0.5, for example 0.1.");
        if (waitsTooLong is not (> 0d and < 0.5))
            throw new ArgumentOutOfRangeException(nameof(waitsTooLong), waitsTooLong, "The chance of waiting too long lies above 0 and below 0.5, for example 0.1.");
        if (beesPerJar < 1)
            throw new ArgumentOutOfRangeException(nameof(beesPerJar), beesPerJar, "A jar holds at least one bee.");
        if (mostJars is < 1 or > MostJarsOfAll)
            throw new ArgumentOutOfRangeException(nameof(mostJars), mostJars, $"A round ends after 1 to {MostJarsOfAll} jars.");
        (Low, High, ActsInVain, WaitsTooLong, BeesPerJar, MostJars) = (low, high, actsInVain, waitsTooLong, beesPerJar, mostJars);
    }

    /// <summary>A level at which to wait.</summary>
    public MiteLevel Low { get; }

    /// <summary>A level at which to act.</summary>
    public MiteLevel High { get; }

    /// <summary>Wanted chance of acting at the low level.</summary>
    public double ActsInVain { get; }

    /// <summary>Wanted chance of waiting at the high level.</summary>
    public double WaitsTooLong { get; }

    /// <summary>Bees in a jar.</summary>
    public int BeesPerJar { get; }

    /// <summary>Jars after which the round ends.</summary>
    public int MostJars { get; }

    /// <summary>ln likelihood ratio from which to act.</summary>
    internal double LogAct => Math.Log((1d - WaitsTooLong) / ActsInVain);

    /// <summary>ln likelihood ratio down to which to wait.</summary>
    internal double LogWait => Math.Log(WaitsTooLong / (1d - ActsInVain));
}
