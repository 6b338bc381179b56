using Foundress.Science.Planning;

namespace Foundress.Book.Planning;

/// <summary>In which order plans are looked at for each thing a keeper may want of one: the first is the best.</summary>
internal static class PlanOrder
{
    internal static (int, double, double, double, double) Fewest(PlanWeight weight, PlanReading reading) =>
        (weight.Controls, weight.WorstHazard, weight.Hazard, weight.Labour, reading.Peak);

    internal static (double, double, int, double, double) Gentlest(PlanWeight weight, PlanReading reading) =>
        (weight.WorstHazard, weight.Hazard, weight.Controls, weight.Labour, reading.Peak);

    internal static (double, int, double, double) LeastWork(PlanWeight weight, PlanReading reading) =>
        (weight.Labour, weight.Controls, weight.Hazard, reading.Peak);

    internal static (double, int, double) Cheapest(PlanWeight weight, PlanReading reading) => (weight.Cost, weight.Controls, reading.Peak);

    internal static (double, int) Surest(PlanWeight weight, PlanReading reading) => (reading.Peak, weight.Controls);
}
