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
        var times = JarTimes.Of(method);
        var how = method.Name
            + (times.Agitation > 0 ? $", shaken {Say.Length(times.Agitation)}" : string.Empty)
            + (times.Settling > 0 ? $", settled {Say.Length(times.Settling)}" : string.Empty);
        return ClipboardSheet.Write(
            $"Round of {Say.Day(round.On)}",
            [$"{round.Purpose}. {how}, the same for every jar.", $"Drawn by lot, seed {round.Seed}. Take the colonies in this order; a reserve only for one that cannot be sampled."],
            [.. method.Cautions.Select(caution => caution.Text)],
            [.. round.Draws.Where(draw => draw.Chosen.Count > 0).Select(draw => Part(draw, apiaryName, colonyName, culture))],
            culture);
    }

    private static ClipboardPart Part(ApiaryDraw draw, Func<ApiaryId, string> apiaryName, Func<ColonyId, string> colonyName, CultureInfo culture)
    {
        var rule = StopRule.Of(draw);
        return new ClipboardPart(
            apiaryName(draw.Apiary),
            [.. draw.Chosen.Select(colonyName)],
            [.. draw.Reserves.Select(colonyName)],
            rule is null ? string.Empty : $"Add up the mites. Stop as soon as they are at or below the one number, or at or above the other. {rule.Promise(culture)}",
            rule?.Lines ?? []);
    }
}
