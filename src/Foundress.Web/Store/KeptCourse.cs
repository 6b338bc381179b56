using Foundress.Book.Forecasts;

namespace Foundress.Web.Store;

/// <summary>A forecast and the key of what went into it.</summary>
/// <param name="Key">The key, one of <see cref="Book.Forecasts.Exchange.ForecastKeys"/>.</param>
/// <param name="Course">The forecast.</param>
public sealed record KeptCourse(string Key, ApiaryCourse Course);
