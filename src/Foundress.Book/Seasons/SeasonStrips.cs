using System.Globalization;
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
    private readonly JudgingPolicy _policy = JudgingPolicy.Of(state, knowledge);

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
        var reader = new JarReader(knowledge, _policy, culture);
        var marks = new List<JarMark>();
        foreach (var jar in state.JarsOf(colony.Id))
        {
            if (jar.Facts.On < from || jar.Facts.On > to || !knowledge.Methods.TryGet(jar.Facts.Method, out _))
                continue;
            var reading = reader.Read(jar.Facts, state.Apiaries.GetValueOrDefault(colony.ApiaryOn(jar.Facts.On)));
            marks.Add(new JarMark(
                jar.Id, colony.Id, colony.Name, jar.Facts.On, reading.Level.Per100Bees,
                reading.Interval.Lower.Per100Bees, reading.Interval.Upper.Per100Bees, reading.Standing,
                jar.Facts.Mites, jar.Facts.Bees.Count, reading.Method.Name));
        }

        return marks;
    }

    private SeasonStrip Of(Apiary apiary, Colony? colony, DateOnly today, DateOnly? within)
    {
        var (from, to) = SiteSeason.YearAround(apiary, within ?? today);
        var jars = colony is not null
            ? Marks(colony, from, to)
            : [.. state.Colonies.Values
                .SelectMany(one => Marks(one, from, to).Where(mark => one.ApiaryOn(mark.On) == apiary.Id))
                .OrderBy(mark => mark.On).ThenBy(mark => mark.ColonyName, NaturalOrder.Instance)];
        var dues = DueDates.For(apiary, state, knowledge, from, to, today);
        var sentence = new SeasonSentence(state, knowledge, culture).For(apiary, colony, jars, today);
        var phases = SiteSeason.Of(apiary, knowledge).Spans(from, to.AddDays(1))
            .Select(span => new PhaseSpan(span.From, span.LastDay, span.Phase))
            .ToList();
        return new SeasonStrip(
            colony is null ? apiary.Name : $"{apiary.Name}, colony {colony.Name}", from, to, today, sentence, phases, Lines(apiary, from, to), jars, dues);
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
