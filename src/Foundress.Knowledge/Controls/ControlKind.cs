namespace Foundress.Knowledge;

/// <summary>What sort of control it is; the efficacy asked of it follows from that.</summary>
public enum ControlKind
{
    /// <summary>A man-made acaricide. Written <c>synthetic</c>.</summary>
    Synthetic,

    /// <summary>An organic acid, an essential oil or a plant extract. Written <c>natural</c>.</summary>
    Natural,

    /// <summary>Something the keeper does to combs, brood or queen. Written <c>non-chemical</c>.</summary>
    NonChemical,
}
