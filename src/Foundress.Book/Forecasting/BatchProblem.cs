using Foundress.Book.Importing;

namespace Foundress.Book.Forecasting;

/// <summary>A row of a batch that was not taken.</summary>
/// <param name="File">Which file: jars, sites, targets, inspections or controls.</param>
/// <param name="Row">The row, as a spreadsheet numbers it.</param>
/// <param name="Problem">What is wrong and how to put it right.</param>
public sealed record BatchProblem(string File, int Row, FieldProblem Problem);
