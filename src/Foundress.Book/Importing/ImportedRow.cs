namespace Foundress.Book.Importing;

/// <summary>What became of one row of a file.</summary>
/// <param name="Row">The row, as a spreadsheet numbers it: the header is row 1.</param>
/// <param name="Line">The line of the file it starts on, as a text editor numbers it.</param>
public abstract record ImportedRow(int Row, int Line);
