using Foundress.Knowledge;

namespace Foundress.Book.Records;

/// <summary>
/// The keeper's own word on a control: figures of the label in hand, that it is not wanted, or a control of the keeper's own.
/// A field that is not given stays as it was, and of two changes to the same field the later one holds.
/// </summary>
/// <param name="Agent">Id of the control in the knowledge files, or a new one for a control of the keeper's own: letters a-z, digits and hyphens.</param>
/// <param name="Title">What it is called; needed for a control of the keeper's own.</param>
/// <param name="Like">For a control of the keeper's own, the known control it is most like: all that is not given here is taken from it.</param>
/// <param name="Aliases">Other names in files.</param>
/// <param name="Days">Days from start to end by the label, 1 to 365.</param>
/// <param name="Coldest">Least of the day's highest temperature in degrees Celsius.</param>
/// <param name="Warmest">Most of the day's highest temperature in degrees Celsius.</param>
/// <param name="Supers">Whether the label allows it with supers on.</param>
/// <param name="DaysBeforeSupers">Days from its end until supers may go on, 0 to 365.</param>
/// <param name="WithdrawalDays">Withdrawal period in days, 0 to 3,650.</param>
/// <param name="MinimumInterval">Least days from its end to the next use, 0 to 365.</param>
/// <param name="Target">Per cent of the mites it should kill to count as having worked, 1 to 100.</param>
/// <param name="Refused">True when the keeper does not want it.</param>
/// <param name="LabelSource">Which label or law these figures are from.</param>
/// <param name="Note">Anything else.</param>
/// <param name="CostPerColony">What one use costs for a colony, in the keeper's own money, 0 to 10,000.</param>
public sealed record AgentRecord(
    string Agent,
    string? Title = null,
    string? Like = null,
    IReadOnlyList<string>? Aliases = null,
    int? Days = null,
    double? Coldest = null,
    double? Warmest = null,
    SuperRule? Supers = null,
    int? DaysBeforeSupers = null,
    int? WithdrawalDays = null,
    int? MinimumInterval = null,
    double? Target = null,
    bool? Refused = null,
    string? LabelSource = null,
    string? Note = null,
    double? CostPerColony = null) : Record;
