using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>Mites that fell onto a board under a colony were counted.</summary>
/// <param name="Colony">The colony.</param>
/// <param name="On">The day the board was read.</param>
/// <param name="Mites">Mites counted on the part that was counted.</param>
/// <param name="Days">Days the board lay, above 0 and at most 60.</param>
/// <param name="ShareCounted">Share of the board that was counted, spread over all of it, above 0 and at most 1; the whole board when not given.</param>
/// <param name="Broodless">Whether the colony had no brood; when not given, the season at its site is asked.</param>
/// <param name="Collapsing">Whether the colony was collapsing: the fall then says nothing.</param>
/// <param name="UnderControl">Whether a control was working or had just ended: the fall is then its kill.</param>
/// <param name="Scavengers">Whether ants or others reached the board: the fall is then a lower limit.</param>
/// <param name="Note">Anything else.</param>
public sealed record MiteFallRecord(
    ColonyId Colony,
    DateOnly On,
    int Mites,
    double Days,
    double? ShareCounted = null,
    bool? Broodless = null,
    bool? Collapsing = null,
    bool? UnderControl = null,
    bool? Scavengers = null,
    string? Note = null) : Record;
