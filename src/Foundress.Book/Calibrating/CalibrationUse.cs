namespace Foundress.Book.Calibrating;

/// <summary>Whether counted jars are used for uncounted ones, and why not.</summary>
public enum CalibrationUse
{
    /// <summary>They are.</summary>
    InUse,

    /// <summary>There are too few of them yet.</summary>
    TooFew,

    /// <summary>The keeper has switched it off.</summary>
    SwitchedOff,

    /// <summary>They differ too much to come from one scoop.</summary>
    TooDifferent,
}
