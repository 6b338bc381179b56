using Foundress.Book.Journal;

namespace Foundress.Server.Demo;

/// <summary>Where the invented keeper's records come from.</summary>
public interface IDemoBook
{
    /// <summary>What the records are made up from: printed at the start, so that anyone can make the same ones.</summary>
    ulong Seed { get; }

    /// <summary>The entries of the operation <c>demo</c>.</summary>
    /// <param name="today">The day the records lead up to.</param>
    IReadOnlyList<Entry> Entries(DateOnly today);
}
