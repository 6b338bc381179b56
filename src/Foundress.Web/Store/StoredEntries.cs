using Foundress.Book.Journal;

namespace Foundress.Web.Store;

/// <summary>Entries read from this device's store.</summary>
/// <param name="Last">Position of the last entry in the store, to read on from.</param>
/// <param name="Entries">The entries.</param>
/// <param name="Broken">How many rows hold no readable entry. They stay in the store.</param>
public sealed record StoredEntries(int Last, IReadOnlyList<Entry> Entries, int Broken);
