using Foundress.Book.Journal;
using Foundress.Book.Seasons;

namespace Foundress.Book.Planning;

/// <summary>A short list of plans of controls, to choose from.</summary>
/// <remarks>It informs and never prescribes: the label, local law and licensed practice decide.</remarks>
/// <param name="Apiary">The apiary.</param>
/// <param name="Colonies">The colonies that would be controlled.</param>
/// <param name="Today">The day it was worked out for.</param>
/// <param name="To">The last day looked at.</param>
/// <param name="Tolerance">The chance of standing over the line that is borne.</param>
/// <param name="ToleranceSource">Where that comes from.</param>
/// <param name="JudgedFrom">The first day that counts.</param>
/// <param name="Lines">The lines in force from today on.</param>
/// <param name="Choices">The plans; doing nothing is the first.</param>
/// <param name="Dropped">What became of the others.</param>
/// <param name="LeftOut">Controls that were not searched, and why.</param>
/// <param name="Sentence">What was found, in words.</param>
/// <param name="Searched">How many were looked at and how, in words.</param>
public sealed record ControlPlans(
    ApiaryId Apiary,
    IReadOnlyList<ColonyId> Colonies,
    DateOnly Today,
    DateOnly To,
    double Tolerance,
    string ToleranceSource,
    DateOnly JudgedFrom,
    IReadOnlyList<LineStep> Lines,
    IReadOnlyList<PlanChoice> Choices,
    IReadOnlyList<DroppedPlans> Dropped,
    IReadOnlyList<string> LeftOut,
    string Sentence,
    string Searched);
