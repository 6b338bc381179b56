using System.Globalization;
using Foundress.Book.Rounds;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;

namespace Foundress.Web.Pages.Rounds;

/// <summary>What the screen for collecting jars says about the jar in hand, in whole sentences.</summary>
public static class CollectSaid
{
    /// <summary>How many jars are left, and how each is worked.</summary>
    /// <param name="round">The round.</param>
    /// <param name="method">Its way of counting.</param>
    /// <param name="times">Its times; those of 0 seconds are not taken.</param>
    public static string ToGo(Round round, CountingMethod method, JarTimes times)
    {
        // English writes the name of a method small inside a sentence; languages with capital nouns leave it as it is.
        var name = Midway.Name(method.Name, CultureInfo.CurrentCulture);
        var (jars, shaken, settled) = (Say.Jars(round.Open.Count), Say.Length(times.Agitation), Say.Length(times.Settling));
        return (times.Agitation > 0, times.Settling > 0) switch
        {
            (true, true) => CollectTexts.FormatToGoShakenSettled(jars, name, shaken, settled),
            (true, false) => CollectTexts.FormatToGoShaken(jars, name, shaken),
            (false, true) => CollectTexts.FormatToGoSettled(jars, name, settled),
            _ => CollectTexts.FormatToGo(jars, name),
        };
    }

    /// <summary>How long a method's shaking and resting usually take, with the sources; empty when nothing is known.</summary>
    public static string Handling(CountingMethod method) => string.Join(" ", method.Handling
        .Where(fact => fact.Id is "shake" or "rest")
        .Select(fact => fact.Figure is { Low: { } low, High: { } high } figure
            ? CollectTexts.FormatHandlingRange(fact.Text, Short(low), Short(high), Units.Name(figure.Unit), figure.Source.Text)
            : CollectTexts.FormatHandlingOne(fact.Text, Short(fact.Figure.Value), Units.Name(fact.Figure.Unit), fact.Figure.Source.Text)));

    /// <summary>What the washings before this one found.</summary>
    public static string CountedBefore(JarInHand jar)
    {
        var before = jar.Passes.SkipLast(1).ToList();
        var counts = string.Join(" + ", before);
        return Plural.Pick(before.Sum(), jar.Again.Count == 1 ? CollectTexts.FormatFirstCount(counts) : CollectTexts.FormatCountsSoFar(counts));
    }

    /// <summary>That the jar was shaken for too short a time; null when it was not.</summary>
    public static string? ShakenShort(JarInHand jar, JarTimes times) => jar.Shaken is { } shaken && shaken < times.Agitation
        ? CollectTexts.FormatShakenShort(Say.Length(shaken), Say.Length(times.Agitation))
        : null;

    /// <summary>How many mites the jar has after all washings, and the question for its bees.</summary>
    public static string HowManyBees(JarInHand jar)
    {
        var mites = Say.Mites(jar.Passes.Sum());
        return jar.WashedAgain ? CollectTexts.FormatHowManyBeesPasses(mites, string.Join(" + ", jar.Passes)) : CollectTexts.FormatHowManyBees(mites);
    }

    /// <summary>That a colony was passed over, and what stands in for it.</summary>
    /// <param name="name">The colony's name.</param>
    /// <param name="reserve">Name of the reserve; null when none is left.</param>
    public static string PassedOver(string name, string? reserve) =>
        reserve is null ? CollectTexts.FormatPassedNoReserve(name) : CollectTexts.FormatPassedReserve(name, reserve);

    private static string Short(double value) => value.ToString("0.#", CultureInfo.CurrentCulture);
}
