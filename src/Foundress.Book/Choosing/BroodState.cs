namespace Foundress.Book.Choosing;

/// <summary>Whether a colony has sealed brood.</summary>
public enum BroodState
{
    /// <summary>None.</summary>
    None,

    /// <summary>Some or much.</summary>
    Some,
}
