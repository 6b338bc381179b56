using Foundress.Book.Journal;
using Foundress.Science.Estimation;

namespace Foundress.Book.Records;

/// <summary>Capped cells of a colony were opened and searched for mites.</summary>
/// <param name="Colony">The colony.</param>
/// <param name="On">The day.</param>
/// <param name="Brood">Worker or drone brood.</param>
/// <param name="Cells">Cells opened, at least 1.</param>
/// <param name="Infested">Cells with at least one mother mite.</param>
/// <param name="Mites">Mother mites in all cells; none when they were not counted.</param>
/// <param name="Note">Anything else.</param>
public sealed record OpenedBroodRecord(
    ColonyId Colony,
    DateOnly On,
    BroodKind Brood,
    int Cells,
    int Infested,
    int? Mites = null,
    string? Note = null) : Record;
