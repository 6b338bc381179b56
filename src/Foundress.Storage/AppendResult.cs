namespace Foundress.Storage;

/// <summary>What became of entries that were to be added. Given only after they are safely on disk.</summary>
/// <param name="Accepted">Entries the book did not hold before.</param>
/// <param name="Known">Entries it held already, or that were given twice.</param>
public readonly record struct AppendResult(int Accepted, int Known);
