using System.Globalization;
using Foundress.Book.Wording;
using Foundress.Science;

namespace Foundress.Book.Forecasts;

/// <summary>Forecasts in plain words.</summary>
internal sealed class ForecastSentences(CultureInfo culture)
{
    private const double Unlikely = 0.1;

    internal string OfColony(int jars, FanPoint today, LineOutlook? outlook, DateOnly? nextJar, bool thin, DateOnly to)
    {
        var basis = jars == 0 ? "No jar of its own; from its neighbours and the season: " : string.Empty;
        var level = $"about {Say.Level(today.Middle, culture)} per 100 today ({Say.Level(today.Low, culture)} to {Say.Level(today.High, culture)})";
        var sentence = basis.Length > 0 ? basis + level : char.ToUpperInvariant(level[0]) + level[1..];
        if (outlook is not null)
            sentence += $"; chance of being over {Say.Line(outlook.Line, culture)}: {Say.InHundred(Chance.Of(Math.Clamp(outlook.Now, 0, 1)), culture)} today. {Coming(outlook, to)}";
        else
            sentence += ".";
        if (nextJar is { } on)
            sentence += $" Beside the jars that are due, one around {Say.Day(on)} would tell most.";
        return thin ? sentence + " The counts fit no usual course well: take this as a wide guess, and look for a miswritten count or a control that was not recorded." : sentence;
    }

    internal string OfSupposed(Supposition suppose, LineOutlook? without, LineOutlook? with, DateOnly to) => without is null || with is null
        ? $"With {suppose.Agent.Title.ToLower(culture)} from {Say.Day(suppose.On)} on."
        : $"With {suppose.Agent.Title.ToLower(culture)} from {Say.Day(suppose.On)} on, the chance of having been over the line by {Say.Day(to)} would be {Say.InHundred(Chance.Of(with.ByEnd), culture)} instead of {Say.InHundred(Chance.Of(without.ByEnd), culture)}. The label, local law and your adviser say whether it may be used.";

    internal string OfApiary(IReadOnlyList<ColonyForecast> colonies, double? expected, DateOnly today, DateOnly to)
    {
        if (expected is not { } over)
            return "No line on this scale is set, so the course is shown without a judgement.";
        var number = Say.Count(colonies.Count, "colony", "colonies");
        var now = colonies.Where(one => one.Outlook is { Now: >= 0.5 }).ToList();
        if (now.Count > 0)
            return $"{Say.Count(now.Count, "colony is", "colonies are")} more likely over the line than not today ({Say.List([.. now.Select(one => one.Name)])}); by {Say.Day(to)} about {over.ToString("0.#", culture)} of {number} may have been, if nothing is done.";
        var first = colonies[0];
        if (first.Outlook?.Likely is { } likely)
            return $"If nothing is done, colony {first.Name} is likely to be over the line around {Say.Day(likely)}; by {Say.Day(to)} about {over.ToString("0.#", culture)} of {number}.";
        return over < Unlikely * colonies.Count
            ? $"No colony is likely to be over the line by {Say.Day(to)}: about {over.ToString("0.#", culture)} of {number} may be."
            : $"By {Say.Day(to)} about {over.ToString("0.#", culture)} of {number} may have been over the line; which ones is not settled. {Days(today, to)}";
    }

    private static string Days(DateOnly today, DateOnly to) => $"That is {Say.Count(to.DayNumber - today.DayNumber, "day", "days")} ahead; the further, the less sure.";

    private string Coming(LineOutlook outlook, DateOnly to)
    {
        if (outlook.Now >= 0.5)
            return outlook.Now >= 0.9 ? "Act now rather than wait." : "It is more likely over the line than not.";
        if (outlook.Likely is { } likely)
        {
            // A chance of 1 in 10 that is already there today needs no day.
            return outlook.Now >= Unlikely
                ? $"If nothing is done the chance of having been over it passes 50 in 100 around {Say.Day(likely)}."
                : $"If nothing is done it is likely over around {Say.Day(likely)}{(outlook.Early is { } early && early < likely ? $", perhaps already by {Say.Day(early)}" : null)}.";
        }

        if (outlook.Now >= Unlikely)
            return $"By {Say.Day(to)} the chance of having been over it is {Say.InHundred(Chance.Of(Math.Clamp(outlook.ByEnd, 0, 1)), culture)}.";
        return outlook.Early is { } perhaps
            ? $"It may be over by {Say.Day(perhaps)} (1 in 10), but more likely not by {Say.Day(to)} ({Say.InHundred(Chance.Of(Math.Clamp(outlook.ByEnd, 0, 1)), culture)})."
            : $"It is unlikely to be over by {Say.Day(to)} ({Say.InHundred(Chance.Of(Math.Clamp(outlook.ByEnd, 0, 1)), culture)}).";
    }
}
