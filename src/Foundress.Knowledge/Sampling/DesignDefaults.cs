namespace Foundress.Knowledge;

/// <summary>What a round is planned to do until the keeper says otherwise.</summary>
/// <param name="HarmlessShareOfLine">A level at which a control would be wasted, per cent of the line: above 0 and at most 100.</param>
/// <param name="HarmfulShareOfLine">A level at which waiting does harm, per cent of the line: above 100.</param>
/// <param name="ShareNotToMiss">Share of colonies over the line that a round should not miss, per cent.</param>
/// <param name="ErrorChance">Wanted chance of either wrong decision of a round that may stop early, per cent: above 0 and below 50.</param>
/// <param name="Precision">Wanted standard error of the apiary's mean over that mean, per cent: above 0 and at most 100.</param>
/// <param name="VisitSpread">How far, besides chance, the level of one jar strays from a colony's steady course: standard deviation of its logarithm, 0 to 1.</param>
/// <param name="Shape">Shape k of the spread between colonies until an apiary's own rounds tell it: relative variance 1/k.</param>
public sealed record DesignDefaults(
    Figure HarmlessShareOfLine, Figure HarmfulShareOfLine, Figure ShareNotToMiss, Figure ErrorChance, Figure Precision, Figure VisitSpread, Figure Shape);
