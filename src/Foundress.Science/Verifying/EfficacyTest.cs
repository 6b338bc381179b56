namespace Foundress.Science.Verifying;

/// <summary>
/// A reduction test with two limits, as guidelines for worm egg counts have it (Coles et al. 1992; Kaplan et al. 2023; Denwood
/// et al. 2023): the interval is held against a target and a lower limit.
/// </summary>
public sealed record EfficacyTest
{
    /// <summary>A test.</summary>
    /// <param name="target">Share of the mites a control of this kind should take away, above 0 and below 1: 0.95.</param>
    /// <param name="margin">How far below the target still does, above 0 and below the target: 0.1.</param>
    /// <param name="confidence">Confidence of the two-sided interval: 0.9 gives two one-sided tests at 5 %.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public EfficacyTest(double target, double margin, double confidence)
    {
        if (target is not (> 0d and < 1d))
            throw new ArgumentOutOfRangeException(nameof(target), target, "A target is a share above 0 and below 1, for example 0.95.");
        if (!(margin > 0d && margin < target))
            throw new ArgumentOutOfRangeException(nameof(margin), margin, "The margin lies above 0 and below the target, for example 0.1.");
        if (confidence is not (> 0d and < 1d))
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "A confidence lies between 0 and 1, for example 0.9.");
        (Target, LowerLimit, Confidence) = (target, target - margin, confidence);
    }

    /// <summary>What it should take away.</summary>
    public double Target { get; }

    /// <summary>What still does.</summary>
    public double LowerLimit { get; }

    /// <summary>Confidence of the interval.</summary>
    public double Confidence { get; }

    /// <summary>The verdict on an efficacy.</summary>
    public Verdict Judge(EfficacyPosterior efficacy)
    {
        ArgumentNullException.ThrowIfNull(efficacy);
        EfficacyInterval interval = efficacy.Interval(Confidence);
        return Judge(interval.Lower, interval.Upper);
    }

    /// <summary>The verdict on an interval: adequate L ≥ M, U ≥ T; borderline L ≥ M, U &lt; T; reduced L &lt; M, U &lt; T; inconclusive L &lt; M, U ≥ T.</summary>
    /// <param name="lower">Its lower limit L.</param>
    /// <param name="upper">Its upper limit U, not below the lower one.</param>
    /// <exception cref="ArgumentOutOfRangeException">The limits are not numbers, or in the wrong order.</exception>
    public Verdict Judge(double lower, double upper)
    {
        if (!(lower <= upper))
            throw new ArgumentOutOfRangeException(nameof(upper), upper, "The upper limit of an interval is not below the lower one.");
        bool enough = lower >= LowerLimit;
        bool reached = upper >= Target;
        if (enough)
            return reached ? Verdict.Worked : Verdict.Partly;
        return reached ? Verdict.CannotTell : Verdict.Failed;
    }
}
