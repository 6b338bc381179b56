namespace Foundress.Science.Choosing;

/// <summary>Foretold temperatures of some days, and usual ones for the rest.</summary>
/// <param name="days">Foretold days.</param>
/// <param name="otherwise">For days that are not among them; null when nothing is known of those.</param>
public sealed class TemperatureForecast(IReadOnlyDictionary<DateOnly, DayTemperatures> days, ITemperatures? otherwise = null) : ITemperatures
{
    /// <inheritdoc/>
    public DayTemperatures? On(DateOnly day) => days.TryGetValue(day, out DayTemperatures foretold) ? foretold : otherwise?.On(day);

    /// <inheritdoc/>
    public bool IsUsual(DateOnly day) => !days.ContainsKey(day) && (otherwise?.IsUsual(day) ?? false);
}
