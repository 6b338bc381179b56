namespace Foundress.Book.Records;

/// <summary>How a use of a control ended.</summary>
public enum ControlEnding
{
    /// <summary>As planned: given or left in for its whole time.</summary>
    AsPlanned,

    /// <summary>Before its time.</summary>
    StoppedEarly,

    /// <summary>Only a part was given, or a part fell out or was carried out by the bees.</summary>
    Partial,
}
