using Foundress.Science;

namespace Foundress.Book.Forecasting;

/// <summary>A jar as forecasts use it.</summary>
/// <param name="On">The day.</param>
/// <param name="MethodId">The counting method.</param>
/// <param name="Mites">Mites counted.</param>
/// <param name="Bees">Bees in the jar.</param>
public sealed record ForecastJar(DateOnly On, string MethodId, int Mites, BeeCount Bees);
