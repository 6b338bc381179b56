namespace Foundress.Science.Verifying;

/// <summary>An efficacy with its uncertainty, or the reason why there is none.</summary>
public sealed record EfficacyOutcome
{
    private EfficacyOutcome(EfficacyPosterior? efficacy, EfficacyRefusal? refusal) => (Efficacy, Refusal) = (efficacy, refusal);

    /// <summary>The efficacy; null when it is undefined.</summary>
    public EfficacyPosterior? Efficacy { get; }

    /// <summary>Why it is undefined; null when it is not.</summary>
    public EfficacyRefusal? Refusal { get; }

    internal static EfficacyOutcome Of(EfficacyPosterior efficacy) => new(efficacy, null);

    internal static EfficacyOutcome Refused(EfficacyRefusal refusal) => new(null, refusal);
}
