using Foundress.Knowledge;

namespace Foundress.Book.Forecasting;

/// <summary>A control that was or will be at work in a colony.</summary>
/// <param name="Agent">What.</param>
/// <param name="Start">The first day.</param>
/// <param name="End">The last day; the same as the first when it was given once or the end is not known.</param>
/// <param name="WasStopped">Whether somebody said that it was over by the last day, before its usual days had passed.</param>
/// <param name="InPart">Whether it was given only in part.</param>
public sealed record ForecastControl(ControlAgent Agent, DateOnly Start, DateOnly End, bool WasStopped = false, bool InPart = false);
