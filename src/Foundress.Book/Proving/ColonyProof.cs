using Foundress.Book.State;
using Foundress.Science.Verifying;

namespace Foundress.Book.Proving;

/// <summary>A colony's jars around a control.</summary>
/// <param name="Course">The control in that colony.</param>
/// <param name="Colony">The colony.</param>
/// <param name="Before">The jars before; empty when there are none that count.</param>
/// <param name="After">The jars after; empty when there are none that count.</param>
/// <param name="Pair">Both as counts; null when the colony tells nothing.</param>
/// <param name="Outcome">The colony's own efficacy, uncorrected; null without a pair.</param>
/// <param name="Why">Why it is not reckoned with, as a sentence; null when it is.</param>
public sealed record ColonyProof(Course Course, Colony Colony, IReadOnlyList<Jar> Before, IReadOnlyList<Jar> After, JarPair? Pair, EfficacyOutcome? Outcome, string? Why);
