using Foundress.Book.Records;
using Foundress.Knowledge;

namespace Foundress.Book.Importing;

/// <summary>What rows are checked against, from the day and the knowledge files.</summary>
/// <param name="Today">No jar may be dated later.</param>
/// <param name="Methods">Ids of the counting methods that give mites per bees in a jar.</param>
/// <param name="WeighedLogSpread">Spread of a weighed number of bees: standard deviation of its natural logarithm, 0 to 1.</param>
/// <param name="AssumedLogSpread">Spread of an assumed number of bees, likewise.</param>
public sealed record JarImportRules(DateOnly Today, IReadOnlyCollection<string> Methods, double WeighedLogSpread, double AssumedLogSpread)
{
    /// <summary>Ids of the measures bees may have been taken with.</summary>
    public IReadOnlyCollection<string> Measures { get; init; } = [];

    /// <summary>The rules by the knowledge files and the keeper's settings.</summary>
    public static JarImportRules From(KnowledgeBase knowledge, PolicyRecord settings, DateOnly today)
    {
        var spreads = BeeSpreads.Of(knowledge, settings);
        return new JarImportRules(today, [.. knowledge.Methods.Where(method => method.IsJar).Select(method => method.Id)], spreads.Weighed, spreads.Assumed)
        {
            Measures = [.. knowledge.JarMeasures.Ids, JarBees.OwnScoop],
        };
    }
}
