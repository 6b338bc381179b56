namespace Foundress.Book.Judging;

/// <summary>The lines a jar is judged by on a day, with where they come from.</summary>
/// <param name="PolicyId">Id of the set of lines; <c>own</c> for the keeper's own.</param>
/// <param name="Title">Its name for people.</param>
/// <param name="ScaleIds">The scales of counting the lines may be used on; levels on other scales are not judged by them.</param>
/// <param name="Unit">The unit of the lines.</param>
/// <param name="Watch">From here a control may be needed; null when the set gives none.</param>
/// <param name="Act">Above here a control is needed; null when the set gives none.</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record LinesInForce(
    string PolicyId,
    string Title,
    IReadOnlyList<string> ScaleIds,
    string Unit,
    double? Watch,
    double? Act,
    string Source)
{
    /// <summary>The line that decides: the upper one where there are two.</summary>
    public double Deciding => Act ?? Watch ?? throw new InvalidOperationException($"The lines '{PolicyId}' give no figure.");
}
