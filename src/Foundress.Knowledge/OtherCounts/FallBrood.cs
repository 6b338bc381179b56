namespace Foundress.Knowledge;

/// <summary>For which colonies a fall factor was given.</summary>
public enum FallBrood
{
    /// <summary>Colonies with brood. Written <c>with</c>.</summary>
    With,

    /// <summary>Colonies without brood. Written <c>without</c>.</summary>
    Without,

    /// <summary>The source makes no difference. Written <c>any</c>.</summary>
    Any,
}
