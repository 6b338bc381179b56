namespace Foundress.Book.Jobs;

/// <summary>How far a job is.</summary>
/// <param name="Done">Parts done.</param>
/// <param name="Of">Parts there are.</param>
/// <param name="Note">What there is to show already, of a form that is the job's own; null when nothing.</param>
/// <param name="Output">The answer as JSON, with the last step; null before.</param>
public readonly record struct JobStep(int Done, int Of, string? Note = null, string? Output = null);
