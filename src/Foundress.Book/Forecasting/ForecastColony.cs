namespace Foundress.Book.Forecasting;

/// <summary>The record of one colony, as forecasts use it.</summary>
/// <param name="Name">Its name, unique within its apiary.</param>
/// <param name="Jars">Its jars, in any order.</param>
/// <param name="Inspections">Its inspections, in any order.</param>
/// <param name="Controls">Its controls, in any order.</param>
public sealed record ForecastColony(
    string Name, IReadOnlyList<ForecastJar> Jars, IReadOnlyList<ForecastInspection> Inspections, IReadOnlyList<ForecastControl> Controls);
