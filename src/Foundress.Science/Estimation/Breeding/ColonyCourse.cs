namespace Foundress.Science.Estimation;

/// <summary>
/// The jars of one colony over time, cut into stretches at each control: within a stretch the level grows at the colony's own
/// pace, and a control moves it by an unknown amount, so nothing is compared across one.
/// </summary>
public sealed record ColonyCourse
{
    /// <summary>A colony's course.</summary>
    /// <param name="colony">Name, unique among the colonies compared; not empty.</param>
    /// <param name="stretches">The visits of each stretch without a control. A stretch with a single visit says nothing about growth.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    public ColonyCourse(string colony, IReadOnlyList<IReadOnlyList<CourseVisit>> stretches)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(colony);
        ArgumentNullException.ThrowIfNull(stretches);
        Colony = colony;
        Stretches = [.. stretches.Select(stretch => (IReadOnlyList<CourseVisit>)[.. stretch])];
    }

    /// <summary>Name of the colony.</summary>
    public string Colony { get; }

    /// <summary>Its stretches.</summary>
    public IReadOnlyList<IReadOnlyList<CourseVisit>> Stretches { get; }
}
