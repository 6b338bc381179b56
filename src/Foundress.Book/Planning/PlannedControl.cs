namespace Foundress.Book.Planning;

/// <summary>A control in a plan.</summary>
/// <param name="Agent">Id of the control.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Start">The day it would start.</param>
/// <param name="End">The day it would be over, by its usual days; the label decides.</param>
/// <param name="First">What must be known or looked at before, in sentences.</param>
/// <param name="Mind">What to mind, cautions of the person first.</param>
public sealed record PlannedControl(string Agent, string Title, DateOnly Start, DateOnly End, IReadOnlyList<string> First, IReadOnlyList<string> Mind);
