namespace Foundress.Knowledge;

/// <summary>Whether a control may be used while supers with honey for people are on.</summary>
public enum SuperRule
{
    /// <summary>Nothing certain is known here: the label decides. Written <c>see-label</c>.</summary>
    SeeLabel,

    /// <summary>Not while supers are on. Written <c>not-on</c>.</summary>
    NotOn,

    /// <summary>Allowed while supers are on, by the labels seen. Written <c>may-be-on</c>.</summary>
    MayBeOn,
}
