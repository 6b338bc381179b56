using Foundress.Book.Records;
using Foundress.Knowledge;

namespace Foundress.Book.Importing;

/// <summary>How far a number of bees that was not counted may be off, from the knowledge files and the keeper's settings.</summary>
/// <param name="Weighed">Standard deviation of the natural logarithm of a weighed number, 0 to 1.</param>
/// <param name="Assumed">The same for an assumed number.</param>
public readonly record struct BeeSpreads(double Weighed, double Assumed)
{
    // Half the width of a 95 % interval of the normal distribution, in standard deviations.
    private const double Wide = 1.959964;

    /// <summary>The spreads.</summary>
    /// <param name="knowledge">The knowledge files.</param>
    /// <param name="settings">The keeper's settings; none for the documented defaults.</param>
    /// <remarks>
    /// Weighed: the weight of a bee differs by the range found in the literature, taken as a 95 % interval on the log scale
    /// (derived: no source gives a spread for a jar that was weighed with its own weighed sub-sample, which would be
    /// narrower). Assumed: that of the keeper's own scoop when it was calibrated, otherwise of the usual measure.
    /// </remarks>
    public static BeeSpreads Of(KnowledgeBase knowledge, PolicyRecord? settings = null)
    {
        var range = knowledge.BeeWeights["literature-range"].Weight;
        var weighed = Math.Log(range.High!.Value / range.Low!.Value) / (2 * Wide);
        var usual = settings?.JarMeasure ?? knowledge.Methods.First(method => method.IsJar && method.DefaultJarId is not null).DefaultJarId!;
        return new BeeSpreads(weighed, settings?.ScoopLogSpread ?? knowledge.JarMeasures[usual].LogSpread.Value);
    }
}
