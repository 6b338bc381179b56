namespace Foundress.Science.Verifying;

/// <summary>What the jars say of a control, in the order of reduction tests.</summary>
public enum Verdict
{
    /// <summary>Not below the lower limit, and the target lies within reach: adequate.</summary>
    Worked,

    /// <summary>Not below the lower limit, but below the target: borderline.</summary>
    Partly,

    /// <summary>Below the target, and perhaps below the lower limit: reduced. Resistance is one possible cause of several.</summary>
    Failed,

    /// <summary>The interval is too wide to tell: inconclusive.</summary>
    CannotTell,
}
