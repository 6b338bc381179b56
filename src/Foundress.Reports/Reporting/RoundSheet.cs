using System.Globalization;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rounds;
using Foundress.Book.Wording;
using Foundress.Knowledge;

namespace Foundress.Reports.Reporting;

/// <summary>The sheet of a round for the clipboard.</summary>
public static class RoundSheet
{
    /// <summary>The sheet as an HTML page that needs nothing else.</summary>
    /// <param name="round">The round; its method is known.</param>
    /// <param name="apiaryName">Names apiaries.</param>
    /// <param name="colonyName">Names colonies.</param>
    /// <param name="knowledge">The known methods.</param>
    /// <param name="culture">Whose numbers to write.</param>
    /// <exception cref="KnowledgeException">The method is not known.</exception>
    public static string Write(
        RoundRecord round, Func<ApiaryId, string> apiaryName, Func<ColonyId, string> colonyName, KnowledgeBase knowledge, CultureInfo culture)
    {
        ArgumentNullException.ThrowIfNull(round);
        ArgumentNullException.ThrowIfNull(knowledge);
        var method = knowledge.Methods[round.Method];
        return ClipboardSheet.Write(
            ReportTexts.FormatRoundOf(Say.Day(round.On)),
            [How(round, method.Name, JarTimes.Of(method)), ReportTexts.FormatDrawnByLot(round.Seed)],
            [.. method.Cautions.Select(caution => caution.Text)],
            [.. round.Draws.Where(draw => draw.Chosen.Count > 0).Select(draw => Part(draw, apiaryName, colonyName, culture))],
            culture);
    }

    private static string How(RoundRecord round, string method, JarTimes times)
    {
        var (shaking, settling) = (Say.Length(times.Agitation), Say.Length(times.Settling));
        return (times.Agitation > 0, times.Settling > 0) switch
        {
            (true, true) => ReportTexts.FormatRoundShakenSettled(OfferedWords.Shown(round.Purpose), method, shaking, settling),
            (true, false) => ReportTexts.FormatRoundShaken(OfferedWords.Shown(round.Purpose), method, shaking),
            (false, true) => ReportTexts.FormatRoundSettled(OfferedWords.Shown(round.Purpose), method, settling),
            _ => ReportTexts.FormatRoundMethod(OfferedWords.Shown(round.Purpose), method),
        };
    }

    private static ClipboardPart Part(ApiaryDraw draw, Func<ApiaryId, string> apiaryName, Func<ColonyId, string> colonyName, CultureInfo culture)
    {
        var rule = StopRule.Of(draw);
        return new ClipboardPart(
            apiaryName(draw.Apiary),
            [.. draw.Chosen.Select(colonyName)],
            [.. draw.Reserves.Select(colonyName)],
            rule is null ? string.Empty : $"{ReportTexts.AddUpMites} {rule.Promise(culture)}",
            rule?.Lines ?? []);
    }
}
