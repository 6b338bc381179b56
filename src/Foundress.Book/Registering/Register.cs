namespace Foundress.Book.Registering;

/// <summary>The register of controls over a stretch of time.</summary>
/// <param name="Operation">What the keeper calls the operation.</param>
/// <param name="Today">The day it was drawn up.</param>
/// <param name="Filter">Which part it is.</param>
/// <param name="FilterText">The same in words.</param>
/// <param name="Rows">The rows by first day, then in the book's order. What no longer holds stands in its place.</param>
/// <param name="Invented">Whether the book is made up.</param>
public sealed record Register(string Operation, DateOnly Today, RegisterFilter Filter, string FilterText, IReadOnlyList<RegisterRow> Rows, bool Invented = false);
