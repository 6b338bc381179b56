using Foundress.Book.Seasons;
using Foundress.Book.State;

namespace Foundress.Book.Rounds;

/// <summary>What a round says.</summary>
/// <param name="Round">The round.</param>
/// <param name="Open">How many colonies still have no jar.</param>
/// <param name="Apiaries">Its apiaries, in the order of the plan.</param>
/// <param name="Whole">What the round says of all its apiaries together, in plain words; null with fewer than two sampled apiaries.</param>
/// <param name="Next">When jars are due next in any of its apiaries; null when nothing is due within a year.</param>
public sealed record RoundResult(Round Round, int Open, IReadOnlyList<ApiaryResult> Apiaries, string? Whole, DueMark? Next);
