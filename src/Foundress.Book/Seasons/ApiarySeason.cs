using Foundress.Book.State;

namespace Foundress.Book.Seasons;

/// <summary>How an apiary stands in its season today.</summary>
/// <param name="Apiary">The apiary.</param>
/// <param name="Urgency">What it asks for.</param>
/// <param name="Sentence">What matters and what to do next, in one plain sentence.</param>
/// <param name="Pending">What is overdue, due now and due next, by day; done dates and all later ones are left out.</param>
public sealed record ApiarySeason(Apiary Apiary, Urgency Urgency, string Sentence, IReadOnlyList<DueMark> Pending);
