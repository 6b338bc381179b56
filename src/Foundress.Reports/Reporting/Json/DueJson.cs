namespace Foundress.Reports.Reporting.Json;

/// <summary>Something due in the JSON report.</summary>
/// <param name="On">The day it is best done, ISO 8601.</param>
/// <param name="From">First day of its window.</param>
/// <param name="To">Last day of its window.</param>
/// <param name="Text">What is due.</param>
/// <param name="State">"toDo", "done" or "overdue".</param>
internal sealed record DueJson(string On, string From, string To, string Text, string State);
