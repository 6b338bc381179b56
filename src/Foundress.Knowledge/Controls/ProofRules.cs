namespace Foundress.Knowledge;

/// <summary>How it is proven that a control worked.</summary>
/// <param name="Margin">Points of per cent below the target down to which a control is not called reduced.</param>
/// <param name="Confidence">Confidence of the two-sided interval the verdict is read from, between 0 and 1.</param>
/// <param name="ProveWithin">Days after the end within which jars belong.</param>
/// <param name="JarsBefore">Days before the start within which a jar still shows what was there.</param>
/// <param name="SealedWait">Days after which mites that were under cappings during a short control have come out.</param>
/// <param name="LeastMites">Fewest mites counted before, over all colonies, for a verdict that is not "cannot tell".</param>
public sealed record ProofRules(Figure Margin, Figure Confidence, Figure ProveWithin, Figure JarsBefore, Figure SealedWait, Figure LeastMites);
