namespace Foundress.Book.Journal;

/// <summary>Where new identifiers come from, so that tests and generated demo books are reproducible.</summary>
public interface IIdSource
{
    /// <summary>A UUID that was never given before.</summary>
    Guid Next();
}
