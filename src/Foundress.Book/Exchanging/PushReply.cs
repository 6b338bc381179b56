using Foundress.Book.Journal;

namespace Foundress.Book.Exchanging;

/// <summary>What became of entries that were given to the server. All but the refused ones are safely on its disk.</summary>
/// <param name="Refused">The entries it would not take, each with its reason.</param>
/// <param name="Incarnation">The life of the server's book that holds them; null when the server names none.</param>
public sealed record PushReply(IReadOnlyDictionary<EntryId, string> Refused, string? Incarnation = null);
