namespace Foundress.Science.Choosing;

/// <summary>The temperatures to reckon with at a place, day by day: normals, a forecast, or both. A feed of forecasts needs only this.</summary>
public interface ITemperatures
{
    /// <summary>The temperatures of a day; null when nothing is known of it.</summary>
    DayTemperatures? On(DateOnly day);

    /// <summary>Whether the day's temperatures are usual ones rather than foretold: single days may then lie well off.</summary>
    bool IsUsual(DateOnly day);
}
