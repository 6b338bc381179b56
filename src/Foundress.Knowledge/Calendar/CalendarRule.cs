using Foundress.Science.Judging;

namespace Foundress.Knowledge;

/// <summary>A date of the year on which counting is due, told by the colony's phase so that it holds north and south.</summary>
/// <param name="Id">Kebab-case name, which is also the key of its purpose.</param>
/// <param name="Phase">The phase.</param>
/// <param name="Point">The point within the phase.</param>
/// <param name="Text">What the count is for, in plain words.</param>
/// <param name="Source">Where the rule comes from.</param>
public sealed record CalendarRule(string Id, SeasonPhase Phase, PhasePoint Point, string Text, Source Source) : IHasId;
