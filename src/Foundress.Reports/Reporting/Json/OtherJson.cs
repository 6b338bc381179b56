namespace Foundress.Reports.Reporting.Json;

/// <summary>A count on another scale in the JSON report. It is never mites per 100 bees.</summary>
/// <param name="Count">The id of its entry, a UUID.</param>
/// <param name="On">The day, ISO 8601.</param>
/// <param name="Kind">"naturalFall", "droneBrood" or "workerBrood".</param>
/// <param name="Unit">"mites/day" or "%" of opened cells.</param>
/// <param name="Value">The rate on that scale.</param>
/// <param name="Lower">Lower end of its interval.</param>
/// <param name="Upper">Upper end of its interval.</param>
/// <param name="Counted">What was counted, in words.</param>
/// <param name="Voids">Why it says nothing or little; empty when it is sound.</param>
/// <param name="AllMitesLowest">The fewest mites the colony may hold by the lowest published factor; null when it cannot be told.</param>
/// <param name="AllMitesHighest">The most by the highest.</param>
/// <param name="Standing">"below", "unclear" or "above" a line of that scale; null when not judged.</param>
internal sealed record OtherJson(
    string Count, string On, string Kind, string Unit, double Value, double Lower, double Upper, string Counted, string[] Voids,
    double? AllMitesLowest, double? AllMitesHighest, string? Standing);
