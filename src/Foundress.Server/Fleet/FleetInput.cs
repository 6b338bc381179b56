using Foundress.Book.Journal;

namespace Foundress.Server.Fleet;

/// <summary>Everything a forecast that is worked out ahead depends on, besides the model.</summary>
/// <param name="Operation">The operation.</param>
/// <param name="Apiary">The apiary.</param>
/// <param name="Today">The day it is made on.</param>
/// <param name="Incarnation">The book's incarnation: the places below hold in it alone.</param>
/// <param name="Sequences">Where the entries of the apiary's part lie.</param>
internal sealed record FleetInput(string Operation, ApiaryId Apiary, DateOnly Today, Guid Incarnation, IReadOnlyList<long> Sequences);
