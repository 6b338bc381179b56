namespace Foundress.Server.Endpoints;

/// <summary>An apiary in the list of all.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Urgency">What it asks for: overTheLine, notSettled, overdue, answered or rest.</param>
/// <param name="Sentence">What matters and what to do next.</param>
/// <param name="Living">How many colonies live there.</param>
/// <param name="Due">How many things are due there.</param>
internal sealed record ApiaryLine(Guid Id, string Name, string Urgency, string Sentence, int Living, int Due);
