namespace Foundress.Knowledge;

/// <summary>
/// What a control does to the mites of a colony day by day, for forecasts. Shares are of the mites that are there that day;
/// the colony's own rate is <c>-ln(1 - share) · exp(<see cref="LogSpread"/> · z)</c> with a standard normal <c>z</c> that is the
/// same on every day and for bees and brood.
/// </summary>
/// <param name="Action">What it does. Only <see cref="ControlAction.Kill"/> kills; the others act through brood and bees.</param>
/// <param name="AdultKillPerDay">Share of the mites on adult bees killed each day, 0 to below 1.</param>
/// <param name="BroodKillPerDay">Share of the mites in sealed cells killed each day, 0 to below 1.</param>
/// <param name="Days">Days it works, from the first.</param>
/// <param name="LogSpread">Standard deviation between colonies of the natural logarithm of the daily rate.</param>
/// <param name="FailureShare">Share of operations in which it fails for all colonies alike (resistance, weather, handling), 0 to 1.</param>
/// <param name="FailureFactor">What the daily rate is multiplied by where it fails, 0 to 1.</param>
/// <param name="HalfLife">Days in which the daily rate falls by half, from the first day on; null where it stays.</param>
/// <param name="DroneCellsRemoved">Share of the sealed drone cells taken out on the first day; null when none.</param>
/// <param name="WorkerCellsRemoved">Share of the sealed worker cells taken out on the first day; null when none.</param>
/// <param name="LayingStops">Days without laying from the first day; null when the queen lays on.</param>
/// <param name="BeesMoved">Share of bees and brood that leave on the first day; null when none.</param>
/// <param name="ReproductionFactor">What mite reproduction is multiplied by once the new queen's workers are there; null when it stays.</param>
/// <param name="ReproductionAfter">Days until then; null when reproduction stays.</param>
public sealed record ControlModel(
    ControlAction Action,
    Figure AdultKillPerDay,
    Figure BroodKillPerDay,
    Figure Days,
    Figure LogSpread,
    Figure FailureShare,
    Figure FailureFactor,
    Figure? HalfLife,
    Figure? DroneCellsRemoved,
    Figure? WorkerCellsRemoved,
    Figure? LayingStops,
    Figure? BeesMoved,
    Figure? ReproductionFactor,
    Figure? ReproductionAfter);
