using Foundress.Knowledge;

namespace Foundress.Book.Rounds;

/// <summary>How long every jar of a round is shaken and left to settle: the same for all, or they cannot be compared.</summary>
/// <param name="Agitation">Seconds of shaking or swirling; 0 when it is not timed.</param>
/// <param name="Settling">Seconds of standing before the mites are counted; 0 when it is not timed.</param>
public readonly record struct JarTimes(int Agitation, int Settling)
{
    /// <summary>The longest time, in seconds: what a jar's record holds.</summary>
    public const int Most = 7200;

    /// <summary>The times the knowledge files give for a method; 0 where they give none.</summary>
    /// <param name="method">The counting method.</param>
    public static JarTimes Of(CountingMethod method) => new(Seconds(method, "shake"), Seconds(method, "rest"));

    private static int Seconds(CountingMethod method, string handling) =>
        method.Handling.FirstOrDefault(fact => fact.Id == handling) is { Figure.Unit: Units.Minutes } fact
            ? (int)Math.Round(60 * fact.Figure.Value)
            : 0;
}
