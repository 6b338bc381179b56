namespace Foundress.Science.Estimation;

/// <summary>Why repeat passes say nothing about the mites left on the bees; the summed count then stands alone.</summary>
public enum RemovalRefusal
{
    /// <summary>There was one pass only: nothing to compare it with.</summary>
    OnePass,

    /// <summary>No pass found a mite.</summary>
    NoMites,

    /// <summary>
    /// Later passes gave as many mites as earlier ones or more: the counts fit any number of mites left. The method gets too
    /// few mites off, or a pass was cut short.
    /// </summary>
    NoDecline,
}
