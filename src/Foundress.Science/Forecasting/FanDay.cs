namespace Foundress.Science.Forecasting;

/// <summary>One day of a fan: the level that is stayed below with a chance of 5, 25, 50, 75 and 95 in 100.</summary>
/// <param name="On">The day.</param>
/// <param name="Low">5 in 100.</param>
/// <param name="LowerQuarter">25 in 100.</param>
/// <param name="Middle">50 in 100.</param>
/// <param name="UpperQuarter">75 in 100.</param>
/// <param name="High">95 in 100.</param>
public readonly record struct FanDay(DateOnly On, MiteLevel Low, MiteLevel LowerQuarter, MiteLevel Middle, MiteLevel UpperQuarter, MiteLevel High);
