using System.Globalization;
using Foundress.Book.Wording;
using Foundress.Science;

namespace Foundress.Book.Forecasts;

/// <summary>Forecasts in plain words.</summary>
internal sealed class ForecastSentences(CultureInfo culture)
{
    private const double Unlikely = 0.1;

    /// <param name="jars">Jars of the colony's own that were used.</param>
    /// <param name="counted">Whether any count of the whole apiary could be used.</param>
    /// <param name="today">Its level today.</param>
    /// <param name="outlook">When it comes to stand over the line; null when none is in force.</param>
    /// <param name="nextJar">The day on which a jar would tell most; null for none.</param>
    /// <param name="thin">Whether the counts fit no course.</param>
    /// <param name="to">The last day looked at.</param>
    internal string OfColony(int jars, bool counted, FanPoint today, LineOutlook? outlook, DateOnly? nextJar, bool thin, DateOnly to)
    {
        var sentence = Today(jars, counted, today, outlook);
        if (outlook is not null)
            sentence += " " + Coming(outlook, to, jars);
        if (nextJar is { } on)
            sentence += " " + ForecastTexts.FormatJarTellsMost(Say.Day(on));
        return thin ? $"{sentence} {ForecastTexts.FitsNoCourse}" : sentence;
    }

    private string Today(int jars, bool counted, FanPoint today, LineOutlook? outlook)
    {
        var (level, low, high) = (Say.Level(today.Middle, culture), Say.Level(today.Low, culture), Say.Level(today.High, culture));
        if (outlook is null)
        {
            return counted
                ? jars == 0 ? ForecastTexts.FormatLevelTodayByNeighbours(level, low, high) : ForecastTexts.FormatLevelToday(level, low, high)
                : ForecastTexts.FormatLevelTodayBySeason(level, low, high);
        }

        var (line, chance) = (Say.Line(outlook.Line, culture), Say.InHundred(Chance.Of(Math.Clamp(outlook.Now, 0, 1)), culture));
        return counted
            ? jars == 0 ? ForecastTexts.FormatLevelAndChanceByNeighbours(level, low, high, line, chance) : ForecastTexts.FormatLevelAndChance(level, low, high, line, chance)
            : ForecastTexts.FormatLevelAndChanceBySeason(level, low, high, line, chance);
    }

    internal string OfSupposed(Supposition suppose, LineOutlook? without, LineOutlook? with, DateOnly to)
    {
        var (title, from) = (Midway.Name(suppose.Agent.Title, culture), Say.Day(suppose.On));
        return without is null || with is null
            ? ForecastTexts.FormatSupposed(title, from)
            : ForecastTexts.FormatSupposedChance(title, from, Say.Day(to), Say.InHundred(Chance.Of(with.ByEnd), culture), Say.InHundred(Chance.Of(without.ByEnd), culture));
    }

    internal string OfApiary(IReadOnlyList<ColonyForecast> colonies, bool counted, double? expected, DateOnly today, DateOnly to)
    {
        var course = Course(colonies, counted, expected, today, to);
        return counted ? course : $"{ForecastTexts.NothingCounted} {course}";
    }

    private string Course(IReadOnlyList<ColonyForecast> colonies, bool counted, double? expected, DateOnly today, DateOnly to)
    {
        if (expected is not { } over)
            return ForecastTexts.NoLine;
        var last = Say.Day(to);
        var some = Plural.Pick(colonies.Count, ForecastTexts.FormatSomeOfColonies(over.ToString("0.#", culture), colonies.Count));
        // With nothing counted all colonies are alike, and a name would be that of chance.
        if (!counted)
            return ForecastTexts.FormatWhichNotSettled(last, some);
        var now = colonies.Where(one => one.Outlook is { Now: >= 0.5 }).ToList();
        if (now.Count > 0)
            return Plural.Pick(now.Count, ForecastTexts.FormatOverToday(now.Count, Say.List([.. now.Select(one => one.Name)]), last, some));
        var first = colonies[0];
        if (first.Outlook?.Likely is { } likely)
            return ForecastTexts.FormatFirstOver(first.Name, Say.Day(likely), last, some);
        var ahead = to.DayNumber - today.DayNumber;
        return over < Unlikely * colonies.Count
            ? ForecastTexts.FormatNoneLikely(last, some)
            : $"{ForecastTexts.FormatWhichNotSettled(last, some)} {Plural.Pick(ahead, ForecastTexts.FormatDaysAhead(ahead))}";
    }

    private string Coming(LineOutlook outlook, DateOnly to, int jars)
    {
        // What was worked out without one jar of the colony is no ground to act on.
        if (outlook.Now >= 0.5 && jars == 0)
            return ForecastTexts.JarDecides;
        if (outlook.Now >= 0.5)
            return outlook.Now >= 0.9 ? ForecastTexts.ActNow : ForecastTexts.MoreLikelyOver;
        if (outlook.Likely is { } likely)
        {
            // A chance of 1 in 10 that is already there today needs no day.
            if (outlook.Now >= Unlikely)
                return ForecastTexts.FormatPassesHalf(Say.Day(likely));
            return outlook.Early is { } early && early < likely
                ? ForecastTexts.FormatLikelyAroundPerhaps(Say.Day(likely), Say.Day(early))
                : ForecastTexts.FormatLikelyAround(Say.Day(likely));
        }

        var byEnd = Say.InHundred(Chance.Of(Math.Clamp(outlook.ByEnd, 0, 1)), culture);
        if (outlook.Now >= Unlikely)
            return ForecastTexts.FormatChanceBy(Say.Day(to), byEnd);
        return outlook.Early is { } perhaps
            ? ForecastTexts.FormatMayBeOver(Say.Day(perhaps), Say.Day(to), byEnd)
            : ForecastTexts.FormatUnlikely(Say.Day(to), byEnd);
    }
}
