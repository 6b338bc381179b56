using Foundress.Book.Journal;

namespace Foundress.Book.Exchanging;

/// <summary>What a file of a whole book held.</summary>
/// <param name="Operation">The operation it was written from.</param>
/// <param name="Entries">The entries that could be read.</param>
/// <param name="Problems">The lines that could not be.</param>
/// <param name="Fault">Why the file is not as it was written, such as a missing end; null when it is.</param>
public sealed record BookFileContent(string Operation, IReadOnlyList<Entry> Entries, IReadOnlyList<LineProblem> Problems, string? Fault)
{
    /// <summary>Whether every line is there and none was changed.</summary>
    public bool IsWhole => Problems.Count == 0 && Fault is null;
}
