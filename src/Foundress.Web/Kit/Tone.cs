namespace Foundress.Web.Kit;

/// <summary>How much a notice matters.</summary>
public enum Tone
{
    /// <summary>Good to know.</summary>
    Info,

    /// <summary>Needs a look.</summary>
    Warn,

    /// <summary>Something did not work.</summary>
    Error,
}
