using Foundress.Book.Journal;

namespace Foundress.Book.Planning.Exchange;

/// <summary>Plans asked for from another place.</summary>
/// <param name="Apiary">The apiary.</param>
/// <param name="Today">The day they are made on.</param>
/// <param name="Options">How they are searched.</param>
public sealed record PlanRequest(ApiaryId Apiary, DateOnly Today, PlanOptions Options);
