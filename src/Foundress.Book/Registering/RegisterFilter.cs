using Foundress.Book.Journal;

namespace Foundress.Book.Registering;

/// <summary>Which part of the register is wanted.</summary>
/// <param name="From">Uses that were at work on this day or later; null for no bound.</param>
/// <param name="To">Uses that began on this day or earlier; null for no bound.</param>
/// <param name="Apiary">Uses on colonies that stood there; null for all.</param>
/// <param name="Agent">Uses of this control, by id; null for all.</param>
/// <param name="SubstancesOnly">Leaves out work on combs, brood and queens.</param>
public sealed record RegisterFilter(DateOnly? From = null, DateOnly? To = null, ApiaryId? Apiary = null, string? Agent = null, bool SubstancesOnly = false);
