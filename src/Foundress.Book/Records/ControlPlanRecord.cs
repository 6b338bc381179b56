using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>
/// A plan of controls the keeper means to follow, so that its days come to the list of what is due. It is no record of a
/// use. A later plan for the same colonies takes its place; to drop one, strike it.
/// </summary>
/// <param name="Apiary">The apiary.</param>
/// <param name="Colonies">The colonies, one or more.</param>
/// <param name="Uses">The controls, by day; one or more.</param>
/// <param name="Made">The day it was worked out.</param>
/// <param name="Tolerance">The chance of standing over the line that was borne, 0 to 1.</param>
/// <param name="Peak">The greatest chance it came to then, 0 to 1.</param>
/// <param name="Note">Anything else.</param>
public sealed record ControlPlanRecord(
    ApiaryId Apiary,
    IReadOnlyList<ColonyId> Colonies,
    IReadOnlyList<PlannedUse> Uses,
    DateOnly Made,
    double? Tolerance = null,
    double? Peak = null,
    string? Note = null) : Record;
