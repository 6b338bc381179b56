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
            return end.Fate == ColonyFate.Died ? SeasonTexts.FormatDiedOn(Say.Day(end.On)) : SeasonTexts.FormatUnitedOn(Say.Day(end.On));
        if (colony is null && state.ColoniesIn(apiary.Id, today).Count == 0)
            return SeasonTexts.NoColonies;
        var due = DueDates.Next(apiary, state, knowledge, today);
        if (latest.Count == 0)
            return due is null ? SeasonTexts.NoJarsTakeFirst : $"{SeasonTexts.NoJarsYet} {Due(due, today)}";
        var day = latest.Max(mark => mark.On);
        var when = Say.Day(day);
        if (day < today.AddDays(-Stale))
            return $"{SeasonTexts.FormatTooOld(when)} {(due is null ? SeasonTexts.SampleAgain : Due(due, today))}";
        var answered = latest.Where(mark => mark.Standing is Standing.Above or Standing.Unclear && SeasonOverview.WasControlledSince(state, mark)).ToList();
        var over = latest.Where(mark => mark.Standing == Standing.Above && !answered.Contains(mark)).ToList();
        var unclear = latest.Where(mark => mark.Standing == Standing.Unclear && !answered.Contains(mark)).ToList();
        if (colony is not null)
            return answered.Count > 0 ? Answered(latest[^1], when) : One(latest[^1], when, due, today) + CutShort([.. over, .. unclear]);
        if (over.Count > 0)
            return Plural.Pick(latest.Count, SeasonTexts.FormatOverTheLine(over.Count, latest.Count, when, Names(over))) + CutShort(over);
        if (unclear.Count > 0)
            return Plural.Pick(unclear.Count, SeasonTexts.FormatNotSettled(when, unclear.Count, latest.Count, Names(unclear)));
        if (answered.Count > 0)
            return Plural.Pick(latest.Count, SeasonTexts.FormatAnswered(answered.Count, latest.Count, when, Names(answered)));
        return latest.All(mark => mark.Standing is null)
            ? SeasonTexts.FormatOtherScale(when)
            : $"{Plural.Pick(latest.Count, SeasonTexts.FormatAllBelow(latest.Count, when))} {NextOf(due, today)}";
    }

    private string CutShort(List<JarMark> marks) => marks.Any(mark => SeasonOverview.WasCutShortSince(state, mark))
        ? " " + SeasonTexts.CutShort
        : string.Empty;

    private string Answered(JarMark jar, string when) =>
        SeasonTexts.FormatLevelAnswered(LevelOn(jar, when));

    private string LevelOn(JarMark jar, string when) =>
        SeasonTexts.FormatLevelOn(Say.Level(jar.Level, culture), when, Say.Level(jar.Lower, culture), Say.Level(jar.Upper, culture));

    private string One(JarMark jar, string when, DueMark? due, DateOnly today)
    {
        var level = LevelOn(jar, when);
        return jar.Standing switch
        {
            Standing.Above => SeasonTexts.FormatLevelOver(level),
            Standing.Unclear => SeasonTexts.FormatLevelNotSettled(level),
            Standing.Below => $"{SeasonTexts.FormatLevelBelow(level)} {NextOf(due, today)}",
            _ => SeasonTexts.FormatLevelNotJudged(level),
        };
    }

    private static string NextOf(DueMark? due, DateOnly today) => due is null ? SeasonTexts.NothingDue : Due(due, today);

    private static string Due(DueMark due, DateOnly today) => due.From <= today
        ? SeasonTexts.FormatDueNow(Say.Day(due.To), Midway.FirstSmall(due.Text))
        : SeasonTexts.FormatNextJars(Say.Day(due.On), Midway.FirstSmall(due.Text));

    private static string Names(List<JarMark> marks) => Named([.. marks.Select(mark => mark.ColonyName).Distinct()]);

    /// <summary>"colony 4", "colonies 4 and 7".</summary>
    internal static string Named(IReadOnlyList<string> names) => Plural.Pick(names.Count, SeasonTexts.FormatColoniesNamed(Say.List(names)));

    // Nothing can be done any more about a year that has passed, so it is only told.
    internal static string ForAnotherYear(IReadOnlyList<JarMark> jars, DateOnly from, DateOnly to)
    {
        var (first, last) = (Say.Day(from), Say.Day(to));
        if (jars.Count == 0)
            return SeasonTexts.FormatNoJarsFrom(first, last);
        var over = jars.Count(mark => mark.Standing == Standing.Above);
        return Plural.Pick(jars.Count, over == 0 ? SeasonTexts.FormatJarsNoneOver(jars.Count, first, last) : SeasonTexts.FormatJarsSomeOver(jars.Count, first, last, over));
    }
}
