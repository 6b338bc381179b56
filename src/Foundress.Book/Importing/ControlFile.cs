namespace Foundress.Book.Importing;

/// <summary>What became of a CSV file of controls.</summary>
/// <param name="Uses">The uses it tells of, in the order of their first rows.</param>
/// <param name="Rejected">Rows that were not taken.</param>
/// <param name="Columns">The file's columns as they are written in it.</param>
/// <param name="UnknownColumns">Columns that were not read.</param>
/// <param name="Separator">The separator found.</param>
public sealed record ControlFile(
    IReadOnlyList<ControlUse> Uses, IReadOnlyList<RejectedRow> Rejected, IReadOnlyList<string> Columns, IReadOnlyList<string> UnknownColumns, char Separator);
