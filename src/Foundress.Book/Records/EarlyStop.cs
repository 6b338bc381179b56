namespace Foundress.Book.Records;

/// <summary>The rule by which a round may stop in an apiary before every colony drawn has a jar (Wald's sequential test).</summary>
/// <param name="Low">A level at which to wait, mites per 100 bees, above 0.</param>
/// <param name="High">A level at which to act, mites per 100 bees, above <paramref name="Low"/>.</param>
/// <param name="ErrorChance">Wanted chance of either wrong decision, above 0 and below 0.5.</param>
/// <param name="Shape">Shape k of the spread between colonies, above 0.</param>
/// <param name="BeesPerJar">Bees in a jar that the printed chart is reckoned for; jars are judged with the bees they held.</param>
public sealed record EarlyStop(double Low, double High, double ErrorChance, double Shape, int BeesPerJar);
