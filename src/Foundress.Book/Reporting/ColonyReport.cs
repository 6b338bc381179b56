using Foundress.Book.Journal;
using Foundress.Book.Seasons;

namespace Foundress.Book.Reporting;

/// <summary>One colony's part of a report.</summary>
/// <param name="Colony">The colony.</param>
/// <param name="Name">Its name.</param>
/// <param name="Fate">What became of it, in words; null while it lives.</param>
/// <param name="Jars">Its jars by day.</param>
public sealed record ColonyReport(ColonyId Colony, string Name, string? Fate, IReadOnlyList<JarMark> Jars)
{
    /// <summary>Its counts on other scales, by day.</summary>
    public IReadOnlyList<OtherMark> Others { get; init; } = [];
}
