using Foundress.Book.Journal;

namespace Foundress.Book.State;

/// <summary>A stretch of time a colony stood in one apiary, up to its next stay.</summary>
/// <param name="Apiary">The apiary.</param>
/// <param name="Since">First day; null when it was never said.</param>
public readonly record struct Stay(ApiaryId Apiary, DateOnly? Since);
