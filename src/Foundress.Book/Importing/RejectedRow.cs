namespace Foundress.Book.Importing;

/// <summary>A row that was not taken.</summary>
/// <param name="Row">The row, as a spreadsheet numbers it.</param>
/// <param name="Line">The line of the file it starts on.</param>
/// <param name="Problems">Everything found wrong with it; never empty.</param>
/// <param name="Fields">Its fields as they stand in the file.</param>
public sealed record RejectedRow(int Row, int Line, IReadOnlyList<FieldProblem> Problems, IReadOnlyList<string> Fields) : ImportedRow(Row, Line);
