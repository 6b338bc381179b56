namespace Foundress.Science.Sampling;

/// <summary>What the jars so far allow.</summary>
public enum SequentialDecision
{
    /// <summary>Too little is known: take another jar.</summary>
    GoOn,

    /// <summary>Stop: the level is low, wait.</summary>
    Wait,

    /// <summary>Stop: the level is high, act.</summary>
    Act,
}
