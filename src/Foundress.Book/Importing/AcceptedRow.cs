using Foundress.Book.Journal;

namespace Foundress.Book.Importing;

/// <summary>A row that was understood.</summary>
/// <param name="Row">The row, as a spreadsheet numbers it.</param>
/// <param name="Line">The line of the file it starts on.</param>
/// <param name="Jar">The jar's id in the book.</param>
/// <param name="Known">Whether the book already holds this jar, from an earlier import of the same row.</param>
/// <param name="Records">What has to be written for it, in this order: a new apiary, a new colony, the jar. Empty when all is known.</param>
public sealed record AcceptedRow(int Row, int Line, EntryId Jar, bool Known, IReadOnlyList<NewRecord> Records) : ImportedRow(Row, Line);
