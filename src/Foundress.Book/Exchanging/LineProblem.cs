namespace Foundress.Book.Exchanging;

/// <summary>What is wrong with a line of a file.</summary>
/// <param name="Line">Its number, from 1.</param>
/// <param name="Message">The field and what was expected.</param>
public sealed record LineProblem(int Line, string Message);
