using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.State;

/// <summary>A control as it ran in one colony.</summary>
/// <param name="Control">The use of the control.</param>
/// <param name="Colony">The colony.</param>
/// <param name="Start">First day.</param>
/// <param name="End">Last day; null while it is open.</param>
/// <param name="Ending">How it ended.</param>
public sealed record Course(Control Control, ColonyId Colony, DateOnly Start, DateOnly? End, CourseEnding Ending)
{
    /// <summary>Id of the control that was used.</summary>
    public string Agent => Control.Facts.Agent;

    /// <summary>The day it is or was to be over; the end itself when that was never planned.</summary>
    public DateOnly? PlannedEnd => Control.Facts.PlannedEnd ?? End;

    /// <summary>
    /// Whether it ended before half of its planned time, or was given only in part: it then answers no jar, since nobody can
    /// say what it did (product choice).
    /// </summary>
    public bool WasCutShort => Ending switch
    {
        CourseEnding.Open => false,
        CourseEnding.Partial => true,
        _ when Control.Facts.PlannedEnd is { } planned => 2 * (End!.Value.DayNumber - Start.DayNumber) < planned.DayNumber - Start.DayNumber,
        _ => Ending == CourseEnding.StoppedEarly,
    };

    /// <summary>Whether it was at work on a day. An open course is at work until somebody says that it ended.</summary>
    public bool RanOn(DateOnly day) => Start <= day && (End is not { } end || day <= end);

    /// <summary>The course of a use in one of its colonies, as the book has it.</summary>
    /// <param name="control">The use.</param>
    /// <param name="id">The colony.</param>
    /// <param name="colony">What is known of the colony; null when the book does not have it.</param>
    internal static Course Of(Control control, ColonyId id, Colony? colony)
    {
        var facts = control.Facts;
        var (end, ending) = control.EndIn(id) switch
        {
            { Facts: var said } => ((DateOnly?)said.On, EndingOf(said.Ending)),
            // What is done in a day needs nobody to say that it is over.
            null when facts.PlannedEnd == facts.Start => (facts.Start, CourseEnding.AsPlanned),
            _ => (null, CourseEnding.Open),
        };
        if (colony?.End is { } gone && gone.On >= facts.Start && (end is null || gone.On < end))
            (end, ending) = (gone.On, CourseEnding.ColonyEnded);
        return new Course(control, id, facts.Start, end, ending);
    }

    private static CourseEnding EndingOf(ControlEnding said) => said switch
    {
        ControlEnding.StoppedEarly => CourseEnding.StoppedEarly,
        ControlEnding.Partial => CourseEnding.Partial,
        _ => CourseEnding.AsPlanned,
    };
}
