using System.Globalization;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science.Judging;

namespace Foundress.Book.Seasons;

/// <summary>The plain sentence above a strip: what matters most and what to do next.</summary>
internal sealed class SeasonSentence(BookState state, KnowledgeBase knowledge, CultureInfo culture)
{
    /// <summary>Jars this old no longer say how a colony stands: with full brood mites about double in a month.</summary>
    internal const int Stale = 42;

    internal string For(Apiary apiary, Colony? colony, IReadOnlyList<JarMark> latest, DateOnly today)
    {
        if (colony?.End is { } end)
            return $"{(end.Fate == ColonyFate.Died ? "Died" : "United with another colony")} on {Say.Day(end.On)}.";
        if (colony is null && state.ColoniesIn(apiary.Id, today).Count == 0)
            return "No living colonies are registered here. Add them to plan a round.";
        var due = DueDates.Next(apiary, state, knowledge, today);
        if (latest.Count == 0)
            return due is null ? "No jars yet: take the first to see where it stands." : $"No jars yet. {Due(due, today)}";
        var day = latest.Max(mark => mark.On);
        var when = Say.Day(day);
        if (day < today.AddDays(-Stale))
            return $"The last jars, of {when}, are too old to say how it stands today. {(due is null ? "Sample again." : Due(due, today))}";
        var answered = latest.Where(mark => mark.Standing is Standing.Above or Standing.Unclear && SeasonOverview.WasControlledSince(state, mark)).ToList();
        var over = latest.Where(mark => mark.Standing == Standing.Above && !answered.Contains(mark)).ToList();
        var unclear = latest.Where(mark => mark.Standing == Standing.Unclear && !answered.Contains(mark)).ToList();
        if (colony is not null)
            return answered.Count > 0 ? Answered(latest[^1], when) : One(latest[^1], when, due, today) + CutShort([.. over, .. unclear]);
        if (over.Count > 0)
        {
            return $"{over.Count} of {Say.Count(latest.Count, "jar", "jars")} around {when} over the line ({Names(over)}): "
                + $"see what control is workable now, and sample the colonies not yet looked at.{CutShort(over)}";
        }

        if (unclear.Count > 0)
            return $"Not settled around {when}: {Say.Count(unclear.Count, "jar", "jars")} of {latest.Count} could be over the line ({Names(unclear)}). Take second jars there.";
        if (answered.Count > 0)
            return $"{answered.Count} of {Say.Count(latest.Count, "jar", "jars")} around {when} over the line or not settled ({Names(answered)}); a control was started since. Its end and the jars after it are among what is due.";
        return latest.All(mark => mark.Standing is null)
            ? $"The jars of {when} are on another scale than the lines, so they are not judged. Choose lines for this kind of count in the settings."
            : $"All {Say.Count(latest.Count, "jar", "jars")} around {when} below the line. {(due is null ? "Nothing is due for now." : Due(due, today))}";
    }

    private string CutShort(List<JarMark> marks) => marks.Any(mark => SeasonOverview.WasCutShortSince(state, mark))
        ? " A control since then was cut short or given only in part, so it is not taken for an answer."
        : string.Empty;

    private string Answered(JarMark jar, string when) =>
        $"{Say.Level(jar.Level, culture)} per 100 on {when} ({Say.Level(jar.Lower, culture)} to {Say.Level(jar.Upper, culture)}); a control was started since. Only jars after it tell how it stands now.";

    private string One(JarMark jar, string when, DueMark? due, DateOnly today)
    {
        var level = $"{Say.Level(jar.Level, culture)} per 100 on {when} ({Say.Level(jar.Lower, culture)} to {Say.Level(jar.Upper, culture)})";
        return jar.Standing switch
        {
            Standing.Above => $"{level}: over the line. See what control is workable now.",
            Standing.Unclear => $"{level}: not settled. Take a second jar.",
            Standing.Below => $"{level}: below the line. {(due is null ? "Nothing is due for now." : Due(due, today))}",
            _ => $"{level}: not judged, because the lines are on another scale.",
        };
    }

    private static string Due(DueMark due, DateOnly today) => due.From <= today
        ? $"Jars are due now, until {Say.Day(due.To)}: {Lowered(due.Text)}"
        : $"Next jars around {Say.Day(due.On)}: {Lowered(due.Text)}";

    private static string Lowered(string text) => text.Length > 0 ? char.ToLowerInvariant(text[0]) + text[1..] : text;

    private static string Names(List<JarMark> marks)
    {
        var names = marks.Select(mark => mark.ColonyName).Distinct().ToList();
        return $"{(names.Count == 1 ? "colony" : "colonies")} {Say.List(names)}";
    }

    // Nothing can be done any more about a year that has passed, so it is only told.
    internal static string ForAnotherYear(IReadOnlyList<JarMark> jars, DateOnly from, DateOnly to)
    {
        var months = $"{Say.Day(from)} to {Say.Day(to)}";
        if (jars.Count == 0)
            return $"No jars from {months}.";
        var over = jars.Count(mark => mark.Standing == Standing.Above);
        return $"{Say.Count(jars.Count, "jar", "jars")} from {months}, {(over == 0 ? "none" : over.ToString(CultureInfo.InvariantCulture))} of them over the line.";
    }
}
