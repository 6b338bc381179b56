namespace Foundress.Book.Dues;

/// <summary>What is due.</summary>
public enum DueKind
{
    /// <summary>Decide on a control: jars are over the line and nothing was done since.</summary>
    Decide,

    /// <summary>Take a control out, or give its last dose.</summary>
    TakeOut,

    /// <summary>Take second jars: the last ones did not settle it.</summary>
    SampleAgain,

    /// <summary>A control of a plan that was kept: its day comes.</summary>
    Planned,

    /// <summary>Take the jars after a control.</summary>
    Prove,

    /// <summary>Take the jars of the season.</summary>
    Sample,

    /// <summary>Open the colonies: brood and supers are not known, and a control depends on them.</summary>
    Inspect,

    /// <summary>Supers may go on again after a control.</summary>
    SupersBack,

    /// <summary>A withdrawal period is over.</summary>
    WithdrawalOver,

    /// <summary>Supers are to go on.</summary>
    SupersOn,

    /// <summary>Supers are to come off.</summary>
    Harvest,
}
