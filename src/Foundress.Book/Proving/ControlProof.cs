using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science.Verifying;

namespace Foundress.Book.Proving;

/// <summary>Whether a control worked, as far as the jars tell.</summary>
public sealed record ControlProof
{
    /// <summary>The use of the control.</summary>
    public required Control Control { get; init; }

    /// <summary>The control; null when it is not known, so that there is no target to hold it against.</summary>
    public required ControlAgent? Agent { get; init; }

    /// <summary>When jars after it are due; null while nobody knows when it ends.</summary>
    public required ProofDue? Due { get; init; }

    /// <summary>Its colonies, by name.</summary>
    public required IReadOnlyList<ColonyProof> Colonies { get; init; }

    /// <summary>The efficacy over all colonies with jars before and after, uncorrected.</summary>
    public required EfficacyOutcome Plain { get; init; }

    /// <summary>The efficacy the verdict is read from: corrected where something to correct by was known.</summary>
    public required EfficacyOutcome Outcome { get; init; }

    /// <summary>What it was corrected by.</summary>
    public required Correction Correction { get; init; }

    /// <summary>Whether the colonies are taken to have had sealed brood.</summary>
    public required bool WithBrood { get; init; }

    /// <summary>The test; null when the control has no target.</summary>
    public required EfficacyTest? Test { get; init; }

    /// <summary>The verdict; null when there is nothing to judge or nothing to judge it by.</summary>
    public required Verdict? Verdict { get; init; }

    /// <summary>What would settle it; null unless the verdict is "cannot tell". Worked out when asked for.</summary>
    public required Lazy<MoreJars?> MoreJars { get; init; }

    /// <summary>What may have falsified the jars: too late or too early, mites brought in, given in part. Whole sentences.</summary>
    public required IReadOnlyList<string> Doubts { get; init; }

    /// <summary>True when mites may have been brought in from elsewhere after the control.</summary>
    public required bool ReinvasionSuspected { get; init; }

    /// <summary>True when it failed although it ran as planned: reduced effect, resistance possible.</summary>
    public required bool ResistanceSignal { get; init; }

    /// <summary>Groups to choose from next, when the effect was reduced.</summary>
    public required IReadOnlyList<ModeOfAction> NextGroups { get; init; }

    /// <summary>The answer in whole sentences.</summary>
    public required string Sentence { get; init; }
}
