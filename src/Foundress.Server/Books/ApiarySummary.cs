using Foundress.Book.Dues;
using Foundress.Book.Seasons;
using Foundress.Book.State;

namespace Foundress.Server.Books;

/// <summary>What is said of an apiary on a day.</summary>
/// <param name="Season">How it stands.</param>
/// <param name="Dues">What is due there, in the order of the list of what is due.</param>
/// <param name="Living">How many colonies live there.</param>
/// <param name="Colonies">The colonies the dues speak of, by id.</param>
internal sealed record ApiarySummary(
    ApiarySeason Season, IReadOnlyList<DueItem> Dues, int Living, IReadOnlyDictionary<Foundress.Book.Journal.ColonyId, Colony> Colonies);
