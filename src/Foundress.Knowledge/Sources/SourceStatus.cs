namespace Foundress.Knowledge;

/// <summary>How well the origin of a figure or statement is known.</summary>
public enum SourceStatus
{
    /// <summary>Seen in the source itself or in its abstract. Written <c>seen</c>.</summary>
    Seen,

    /// <summary>Seen in somebody else's account of the source. Written <c>second-hand</c>.</summary>
    SecondHand,

    /// <summary>Recalled and not looked up since: editable, to be checked before anybody leans on it. Written <c>from memory</c>.</summary>
    FromMemory,

    /// <summary>Worked out by arithmetic or textbook statistics from other figures; the text says how. Written <c>derived</c>.</summary>
    Derived,

    /// <summary>A rule of thumb of the trade. Written <c>common practice</c>; its text begins "common practice, no source".</summary>
    CommonPractice,

    /// <summary>Chosen for this product, with the reason in the text. Written <c>product choice</c>; its text begins "product choice, no source".</summary>
    ProductChoice,
}
