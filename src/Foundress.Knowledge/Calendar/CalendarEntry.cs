using Foundress.Science.Sampling;

namespace Foundress.Knowledge;

/// <summary>A time of the year on which counting is due, told by the colony's phase so that it holds north and south.</summary>
/// <param name="Id">Kebab-case name.</param>
/// <param name="Rule">The rule the calendar is worked out from; its purpose is <paramref name="Id"/>, its leeway that of <paramref name="Leeway"/>.</param>
/// <param name="Text">What the count is for, in plain words.</param>
/// <param name="Leeway">Days before and after the date on which the count still serves: a whole number.</param>
/// <param name="Source">Where the rule comes from.</param>
public sealed record CalendarEntry(string Id, CalendarRule Rule, string Text, Figure Leeway, Source Source) : IHasId;
