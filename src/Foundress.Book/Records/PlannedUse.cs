namespace Foundress.Book.Records;

/// <summary>A control that is meant to be used.</summary>
/// <param name="Agent">Id of the control.</param>
/// <param name="Start">The day it is meant to start.</param>
/// <param name="End">The day it would be over, by its usual days; not before the start.</param>
public sealed record PlannedUse(string Agent, DateOnly Start, DateOnly End);
