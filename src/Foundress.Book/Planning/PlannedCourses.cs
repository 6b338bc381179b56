using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;

namespace Foundress.Book.Planning;

/// <summary>Controls of a plan as if they had been recorded, for the rules to look at.</summary>
internal static class PlannedCourses
{
    private static readonly Entry NotWritten = new(new EntryId(Guid.Empty), string.Empty, string.Empty, string.Empty, default, RecordKinds.Control, RecordKinds.CurrentSchema, "{}");

    internal static IEnumerable<Course> Of(IEnumerable<PlanUse> plan, IReadOnlyList<ColonyId> colonies) => plan.SelectMany(use =>
    {
        var control = new Control(NotWritten, new ControlRecord(new ControlId(Guid.Empty), use.Agent.Id, use.Start, colonies, use.End), []);
        return colonies.Select(colony => new Course(control, colony, use.Start, use.End, CourseEnding.AsPlanned));
    });
}
