using Foundress.Book.Journal;

namespace Foundress.Book.Importing;

/// <summary>A use of a control that a file tells of.</summary>
/// <param name="Rows">The rows it stands in, as a spreadsheet numbers them.</param>
/// <param name="Control">The use.</param>
/// <param name="Known">Whether the book already holds all of it.</param>
/// <param name="Records">What has to be written for it; empty when all is known.</param>
/// <param name="Doubts">What is unusual about it. It is taken all the same: the book records what happened.</param>
public sealed record ControlUse(IReadOnlyList<int> Rows, ControlId Control, bool Known, IReadOnlyList<NewRecord> Records, IReadOnlyList<string> Doubts);
