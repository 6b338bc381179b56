namespace Foundress.Book.Forecasts;

/// <summary>One day of a fan: mites per 100 bees that are stayed below with a chance of 5, 25, 50, 75 and 95 in 100.</summary>
/// <param name="On">The day.</param>
/// <param name="Low">5 in 100.</param>
/// <param name="LowerQuarter">25 in 100.</param>
/// <param name="Middle">50 in 100.</param>
/// <param name="UpperQuarter">75 in 100.</param>
/// <param name="High">95 in 100.</param>
public readonly record struct FanPoint(DateOnly On, double Low, double LowerQuarter, double Middle, double UpperQuarter, double High);
