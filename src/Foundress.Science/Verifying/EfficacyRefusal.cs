namespace Foundress.Science.Verifying;

/// <summary>Why no efficacy can be given: the ratio it rests on is undefined. That is never an efficacy of 100 %.</summary>
public enum EfficacyRefusal
{
    /// <summary>No colony has jars before and after.</summary>
    NoPairs,

    /// <summary>No mite was counted before the control: there was nothing to kill.</summary>
    NoMitesBefore,

    /// <summary>No untreated colony has jars before and after.</summary>
    NoControlPairs,

    /// <summary>No mite was counted in the untreated colonies before.</summary>
    NoMitesInControlsBefore,

    /// <summary>No mite was counted in the untreated colonies after: nothing to compare with.</summary>
    NoMitesInControlsAfter,

    /// <summary>No mite fell, neither under the control nor under the follow-up.</summary>
    NoMitesFell,
}
