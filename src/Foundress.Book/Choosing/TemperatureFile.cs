using Foundress.Book.Importing;
using Foundress.Science.Choosing;

namespace Foundress.Book.Choosing;

/// <summary>A forecast read from a CSV file.</summary>
/// <param name="Days">The days read.</param>
/// <param name="Rejected">Rows that were not taken, by row number, with the fix.</param>
public sealed record TemperatureFile(IReadOnlyDictionary<DateOnly, DayTemperatures> Days, IReadOnlyList<(int Row, FieldProblem Problem)> Rejected);
