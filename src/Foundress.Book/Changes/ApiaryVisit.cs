using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Science.Estimation;

namespace Foundress.Book.Changes;

/// <summary>The jars of one apiary that belong together: those of one round, or those of one day without a round, all counted in one way.</summary>
/// <param name="Apiary">Where.</param>
/// <param name="On">The day of the last of them.</param>
/// <param name="Method">Id of the counting method.</param>
/// <param name="Round">The round, if any.</param>
/// <param name="Colonies">The colonies sampled, each with its jars, at least one.</param>
public sealed record ApiaryVisit(
    ApiaryId Apiary, DateOnly On, string Method, RoundId? Round, IReadOnlyList<KeyValuePair<ColonyId, IReadOnlyList<Jar>>> Colonies)
{
    /// <summary>The jars of each colony as the estimators take them.</summary>
    public IReadOnlyList<ColonyJars> Counts =>
        [.. Colonies.Select(colony => new ColonyJars(colony.Key.ToString(), CountsOf(colony.Value)))];

    /// <summary>What the visit says of the whole apiary.</summary>
    /// <param name="living">Living colonies that day; those without a jar are inferred.</param>
    public ApiaryPosterior Posterior(int living) => ApiaryPosterior.FromJars(Counts, Math.Max(0, living - Colonies.Count));

    /// <summary>Jars as the estimators take them.</summary>
    public static IReadOnlyList<JarCount> CountsOf(IReadOnlyList<Jar> jars) =>
        [.. jars.Select(jar => new JarCount(jar.Facts.Mites, jar.Facts.Bees.AsBeeCount))];
}
