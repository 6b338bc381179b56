using System.Globalization;
using Foundress.Book.Controls;
using Foundress.Book.Journal;
using Foundress.Book.Judging;
using Foundress.Book.State;
using Foundress.Knowledge;

namespace Foundress.Book.Seasons;

/// <summary>Builds the season strip of an apiary, or of one colony in it.</summary>
/// <param name="state">The book.</param>
/// <param name="knowledge">Methods, lines and calendar.</param>
/// <param name="culture">How numbers are written in the sentence.</param>
public sealed class SeasonStrips(BookState state, KnowledgeBase knowledge, CultureInfo culture)
{
    /// <summary>Jars this close together are one visit.</summary>
    private const int VisitDays = 7;

    private readonly JudgingPolicy _policy = JudgingPolicy.Of(state, knowledge);
    private readonly JarReader _reader = new(knowledge, JudgingPolicy.Of(state, knowledge), culture);
    private readonly OtherCountReader _others = new(knowledge, JudgingPolicy.Of(state, knowledge), culture);
    private readonly ControlList _controls = ControlList.Of(state, knowledge);
    private readonly Dictionary<EntryId, JarMark?> _marks = [];

    /// <summary>The strip of an apiary over the twelve months that hold a day.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="today">The reader's day.</param>
    /// <param name="within">A day of the twelve months to show; today when not given.</param>
    public SeasonStrip Of(Apiary apiary, DateOnly today, DateOnly? within = null) => Of(apiary, null, today, within);

    /// <summary>The strip of one colony, in the apiary where it stands.</summary>
    /// <param name="colony">The colony.</param>
    /// <param name="today">The reader's day.</param>
    /// <param name="within">A day of the twelve months to show; today when not given.</param>
    public SeasonStrip Of(Colony colony, DateOnly today, DateOnly? within = null) =>
        Of(state.Apiaries[colony.Apiary], colony, today, within);

    /// <summary>The jars of a colony as marks, by day.</summary>
    /// <param name="colony">The colony.</param>
    /// <param name="from">First day.</param>
    /// <param name="to">Last day.</param>
    public IReadOnlyList<JarMark> Marks(Colony colony, DateOnly from, DateOnly to)
    {
        var marks = new List<JarMark>();
        foreach (var jar in state.JarsOf(colony.Id))
        {
            if (jar.Facts.On >= from && jar.Facts.On <= to && Mark(jar, colony) is { } mark)
                marks.Add(mark);
        }

        return marks;
    }

    /// <summary>The counts of a colony on other scales, by day.</summary>
    /// <param name="colony">The colony.</param>
    /// <param name="from">First day.</param>
    /// <param name="to">Last day.</param>
    public IReadOnlyList<OtherMark> Others(Colony colony, DateOnly from, DateOnly to)
    {
        var marks = new List<OtherMark>();
        foreach (var fall in state.FallsOf(colony.Id))
        {
            if (fall.Facts.On >= from && fall.Facts.On <= to)
                marks.Add(new OtherMark(fall.Entry.Id, colony.Id, colony.Name, _others.Read(fall.Facts, ApiaryOf(colony, fall.Facts.On))));
        }

        foreach (var brood in state.BroodOf(colony.Id))
        {
            if (brood.Facts.On >= from && brood.Facts.On <= to)
                marks.Add(new OtherMark(brood.Entry.Id, colony.Id, colony.Name, _others.Read(brood.Facts, ApiaryOf(colony, brood.Facts.On))));
        }

        return [.. marks.OrderBy(mark => mark.On)];
    }

    /// <summary>The jars of an apiary's last visit up to a day, one a colony and by name; empty when there is none.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="today">The reader's day.</param>
    public IReadOnlyList<JarMark> LastVisit(Apiary apiary, DateOnly today) => LastVisit(JarsIn(apiary, DateOnly.MinValue, today));

    private List<JarMark> LastVisit(IReadOnlyList<(Jar Jar, Colony Colony)> jars)
    {
        if (jars.Count == 0)
            return [];
        var from = jars.Max(one => one.Jar.Facts.On).AddDays(-VisitDays);
        return [.. jars
            .Where(one => one.Jar.Facts.On >= from)
            .GroupBy(one => one.Colony.Id)
            .Select(group => group.Last())
            .Select(one => Mark(one.Jar, one.Colony))
            .OfType<JarMark>()
            .OrderBy(mark => mark.ColonyName, NaturalOrder.Instance)];
    }

    private List<(Jar Jar, Colony Colony)> JarsIn(Apiary apiary, DateOnly from, DateOnly to) =>
        [.. state.JarsIn(apiary.Id).Where(one => one.Jar.Facts.On >= from && one.Jar.Facts.On <= to)];

    // A jar is worked out once, however often it is shown.
    private JarMark? Mark(Jar jar, Colony colony)
    {
        if (_marks.TryGetValue(jar.Id, out var known))
            return known;
        JarMark? mark = null;
        if (knowledge.Methods.TryGet(jar.Facts.Method, out var method))
        {
            var stands = _reader.Stand(jar.Facts, state.Apiaries.GetValueOrDefault(colony.ApiaryOn(jar.Facts.On)));
            mark = new JarMark(
                jar.Id, colony.Id, colony.Name, jar.Facts.On, stands.Level.Per100Bees,
                stands.Interval.Lower.Per100Bees, stands.Interval.Upper.Per100Bees, stands.Standing,
                jar.Facts.Mites, jar.Facts.Bees.Count, method.Name);
        }

        _marks.Add(jar.Id, mark);
        return mark;
    }

    private SeasonStrip Of(Apiary apiary, Colony? colony, DateOnly today, DateOnly? within)
    {
        var (from, to) = SiteSeason.YearAround(apiary, within ?? today);
        var jars = colony is not null
            ? Marks(colony, from, to)
            : [.. JarsIn(apiary, from, to)
                .Select(one => Mark(one.Jar, one.Colony))
                .OfType<JarMark>()
                .OrderBy(mark => mark.On).ThenBy(mark => mark.ColonyName, NaturalOrder.Instance)];
        var dues = DueDates.For(apiary, state, knowledge, from, to, today);
        var sentence = today < from || today > to
            ? SeasonSentence.ForAnotherYear(jars, from, to)
            : Sentence(apiary, colony, today);
        var phases = SiteSeason.Of(apiary, knowledge).Spans(from, to.AddDays(1));
        return new SeasonStrip(
            colony is null ? apiary.Name : SeasonTexts.FormatColonyOfApiary(apiary.Name, colony.Name), from, to, today, sentence, phases, Lines(apiary, from, to), jars, dues)
        {
            Others = colony is not null ? Others(colony, from, to) : OthersIn(apiary, from, to),
            Controls = ControlBars.Of(
                colony is not null ? state.CoursesOf(colony.Id) : CoursesIn(apiary), _controls, from, to, today),
        };
    }

    private Apiary? ApiaryOf(Colony colony, DateOnly day) => state.Apiaries.GetValueOrDefault(colony.ApiaryOn(day));

    private IEnumerable<Course> CoursesIn(Apiary apiary) =>
        state.Colonies.Values
            .Where(colony => colony.Stays.Any(stay => stay.Apiary == apiary.Id))
            .SelectMany(colony => state.CoursesOf(colony.Id).Where(course => colony.ApiaryOn(course.Start) == apiary.Id));

    private List<OtherMark> OthersIn(Apiary apiary, DateOnly from, DateOnly to) =>
        [.. state.Colonies.Values
            .Where(colony => colony.Stays.Any(stay => stay.Apiary == apiary.Id))
            .SelectMany(colony => Others(colony, from, to).Where(mark => colony.ApiaryOn(mark.On) == apiary.Id))
            .OrderBy(mark => mark.On).ThenBy(mark => mark.ColonyName, NaturalOrder.Instance)];

    /// <summary>The plain sentence about an apiary today, whichever months are shown.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="today">The reader's day.</param>
    public string Sentence(Apiary apiary, DateOnly today) => Sentence(apiary, null, today);

    private string Sentence(Apiary apiary, Colony? colony, DateOnly today)
    {
        var latest = colony is null
            ? LastVisit(apiary, today)
            : LastVisit([.. state.JarsOf(colony.Id).Where(jar => jar.Facts.On <= today).Select(jar => (jar, colony))]);
        return new SeasonSentence(state, knowledge, culture).For(apiary, colony, latest, today);
    }

    // Lines change by phase or by calendar month, so a month is the finest step.
    private List<LineStep> Lines(Apiary apiary, DateOnly from, DateOnly to)
    {
        var steps = new List<LineStep>();
        for (var first = from; first <= to; first = new DateOnly(first.Year, first.Month, 1).AddMonths(1))
        {
            var last = new DateOnly(first.Year, first.Month, 1).AddMonths(1).AddDays(-1);
            if (_policy.On(apiary, first) is not { Unit: Units.MitesPer100Bees } lines)
                continue;
            var step = new LineStep(first, last < to ? last : to, lines.Watch, lines.Deciding);
            if (steps.Count > 0 && steps[^1] is var previous && previous.To.AddDays(1) == step.From && previous.Watch == step.Watch && previous.Act == step.Act)
                steps[^1] = previous with { To = step.To };
            else
                steps.Add(step);
        }

        return steps;
    }
}
