namespace Foundress.Knowledge;

/// <summary>Whether a control kills mites under the cappings.</summary>
public enum BroodReach
{
    /// <summary>Only mites on adult bees. Written <c>none</c>.</summary>
    None,

    /// <summary>A small or unsure part of the mites in cells. Written <c>limited</c>.</summary>
    Limited,

    /// <summary>Mites in cells as well. Written <c>yes</c>.</summary>
    Yes,
}
