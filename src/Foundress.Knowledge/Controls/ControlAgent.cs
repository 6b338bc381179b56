namespace Foundress.Knowledge;

/// <summary>
/// A control by active ingredient and form, or one without a chemical: what is published about it. Nothing here overrides a
/// label, and no dose is told.
/// </summary>
/// <param name="Id">Kebab-case name such as <c>amitraz-strips</c>.</param>
/// <param name="Title">Name shown to people.</param>
/// <param name="Description">What it is and how it works, in one or two plain sentences.</param>
/// <param name="Ingredient">The active ingredient in lower case, such as <c>amitraz</c>; for a control without a chemical what is done.</param>
/// <param name="Kind">Synthetic, natural or non-chemical.</param>
/// <param name="Form">How it comes into the colony.</param>
/// <param name="IsOffered">False for forms that are only kept in the record when they were used, and never offered.</param>
/// <param name="Aliases">Other ways it is written in files, in English and in the language of the knowledge. Several controls may share one.</param>
/// <param name="ModeId">Its mode of action.</param>
/// <param name="Days">Usual days from start to end, with the range labels give.</param>
/// <param name="Temperatures">Limits of the outdoor temperature; empty when none is known.</param>
/// <param name="Reach">Whether it kills mites under the cappings.</param>
/// <param name="Efficacies">What sources found; several that disagree are all listed.</param>
/// <param name="TargetBroodless">Per cent of the mites it should kill without sealed brood to count as having worked; null when it is not meant to kill so.</param>
/// <param name="TargetWithBrood">The same with sealed brood; null when it is not meant to kill so.</param>
/// <param name="Supers">The rule on honey supers, one for each jurisdiction.</param>
/// <param name="DaysBeforeSupers">Days from its end until supers may go on, where a label says so; null when unknown: see the label.</param>
/// <param name="MinimumInterval">Least days from its end to the next use; null when unknown.</param>
/// <param name="LeastBroodFrames">Least frames of brood the colony should have, where a label says so; null when there is no such rule.</param>
/// <param name="Requirements">What the colony must be like.</param>
/// <param name="GearIds">What the keeper must have.</param>
/// <param name="Resistance">Reports of mites that withstand it.</param>
/// <param name="Risks">What it may do to queen, brood and bees.</param>
/// <param name="Cautions">What may hurt a person or spoil honey, shown at the step.</param>
/// <param name="Organic">Whether certified organic keeping allows it.</param>
/// <param name="HazardRank">1 (least) to 5 (most) for people, bees and comb; the product's own choice.</param>
/// <param name="LabourRank">1 (least) to 5 (most) cost and work; the product's own choice.</param>
/// <param name="Model">What forecasts reckon with.</param>
public sealed record ControlAgent(
    string Id,
    string Title,
    string Description,
    string Ingredient,
    ControlKind Kind,
    ControlForm Form,
    bool IsOffered,
    IReadOnlyList<string> Aliases,
    string ModeId,
    Figure Days,
    IReadOnlyList<TemperatureLimit> Temperatures,
    BroodReach Reach,
    IReadOnlyList<Efficacy> Efficacies,
    Figure? TargetBroodless,
    Figure? TargetWithBrood,
    IReadOnlyList<SuperRuling> Supers,
    Figure? DaysBeforeSupers,
    Figure? MinimumInterval,
    Figure? LeastBroodFrames,
    IReadOnlyList<Requirement> Requirements,
    IReadOnlyList<string> GearIds,
    IReadOnlyList<Statement> Resistance,
    IReadOnlyList<Statement> Risks,
    IReadOnlyList<Statement> Cautions,
    OrganicRuling Organic,
    Figure HazardRank,
    Figure LabourRank,
    ControlModel Model) : IHasId
{
    /// <summary>Its title in English, by which files of readers of another language may name it.</summary>
    internal string EnglishTitle { get; init; } = Title;

    /// <summary>True when no substance is given.</summary>
    public bool IsNonChemical => Kind == ControlKind.NonChemical;

    /// <summary>The day a use that begins on a day is over, by its usual days: the same day for what is done in one.</summary>
    public DateOnly UsualEnd(DateOnly start) => Days.Value > 1 ? start.AddDays((int)Days.Value) : start;

    /// <summary>The rule on supers there.</summary>
    public SuperRuling SupersIn(Jurisdiction jurisdiction) => Supers.First(ruling => ruling.Jurisdiction == jurisdiction);

    /// <summary>The share in per cent it should kill to count as having worked; null when it is not meant to kill so.</summary>
    /// <param name="withBrood">Whether the colony had sealed brood.</param>
    public Figure? Target(bool withBrood) => withBrood ? TargetWithBrood : TargetBroodless;
}
