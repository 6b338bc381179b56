namespace Foundress.Knowledge;

/// <summary>Whether certified organic keeping allows a control.</summary>
public enum OrganicUse
{
    /// <summary>Written <c>allowed</c>.</summary>
    Allowed,

    /// <summary>Written <c>not-allowed</c>.</summary>
    NotAllowed,

    /// <summary>It depends on the certifier and the country. Written <c>ask-certifier</c>.</summary>
    AskCertifier,
}
