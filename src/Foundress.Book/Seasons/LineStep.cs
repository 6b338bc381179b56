namespace Foundress.Book.Seasons;

/// <summary>The lines in force over a stretch of days, on the scale of the strip (mites per 100 bees).</summary>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="Watch">From here a control may be needed; null when the policy gives none.</param>
/// <param name="Act">Above here a control is needed.</param>
public readonly record struct LineStep(DateOnly From, DateOnly To, double? Watch, double Act);
