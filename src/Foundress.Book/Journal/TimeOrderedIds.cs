namespace Foundress.Book.Journal;

/// <summary>UUID version 7 identifiers (RFC 9562): unique, and roughly in the order they were made.</summary>
/// <remarks>They are not an order: entries are ordered by their clock. Safe for concurrent use.</remarks>
/// <param name="time">The clock the identifiers are stamped with.</param>
public sealed class TimeOrderedIds(TimeProvider time) : IIdSource
{
    /// <inheritdoc/>
#pragma warning disable RS0030 // The one place where fresh identifiers are made.
    public Guid Next() => Guid.CreateVersion7(time.GetUtcNow());
#pragma warning restore RS0030
}
