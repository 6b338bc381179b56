namespace Foundress.Server.Exchange;

/// <summary>What became of the entries that were sent. All but the refused ones are safely on disk.</summary>
/// <param name="Accepted">Entries the book did not hold before.</param>
/// <param name="Known">Entries it held already.</param>
/// <param name="Refused">Entries that were not kept, with the reason.</param>
/// <param name="Incarnation">The life of the book that holds them: a device that knows another begins anew.</param>
public sealed record ExchangeAnswer(int Accepted, int Known, IReadOnlyList<RefusedEntry> Refused, Guid Incarnation);
