namespace Foundress.Knowledge;

/// <summary>A way of counting mites.</summary>
/// <param name="Id">Kebab-case name in the trade's words, such as <c>alcohol-wash</c>.</param>
/// <param name="Name">Name shown to people.</param>
/// <param name="Description">One or two plain sentences.</param>
/// <param name="ScaleId">The scale its counts are on.</param>
/// <param name="IsJar">True when adult bees are taken in a jar, so that a level in mites per 100 bees can be worked out.</param>
/// <param name="IsHistoric">True when the method is listed for the lines that were set with it and is not offered for new counts.</param>
/// <param name="KillsSample">True when the sampled bees (or brood) die.</param>
/// <param name="DefaultJarId">The measure of bees usually taken; null when the method is no jar method.</param>
/// <param name="Recoveries">What sources found it recovers; several that disagree are all listed. Empty when none was found: do not assume one.</param>
/// <param name="Handling">Figures of its procedure, such as the minutes of shaking.</param>
/// <param name="Cautions">What to mind, shown at the step.</param>
public sealed record CountingMethod(
    string Id,
    string Name,
    string Description,
    string ScaleId,
    bool IsJar,
    bool IsHistoric,
    bool KillsSample,
    string? DefaultJarId,
    IReadOnlyList<Recovery> Recoveries,
    IReadOnlyList<Fact> Handling,
    IReadOnlyList<Statement> Cautions) : IHasId;
