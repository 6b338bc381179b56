using Foundress.Book.Importing;
using Foundress.Book.Records;
using Foundress.Cli.Running;
using Foundress.Knowledge;
using Foundress.Science;

namespace Foundress.Cli.Commands;

/// <summary>The bees of a jar as they are given on the command line.</summary>
internal static class JarBeesArgument
{
    internal static JarBees Read(string? bees, string? basis, string? measure, KnowledgeBase knowledge)
    {
        var known = MeasureOf(measure, knowledge);
        var how = BeeBasis.Counted;
        if (basis is null)
            how = known is null ? BeeBasis.Counted : BeeBasis.Assumed;
        else if (BasisField.Read(basis, out how) is not null)
            throw new UsageException($"--basis '{basis}': Write counted, weighed or assumed.");
        if (known is not null && how != BeeBasis.Assumed)
            throw new UsageException($"--measure '{measure}' stands for an assumed number of bees, but --basis says {basis}: keep one of them.");
        double number;
        if (bees is null)
        {
            if (known is null)
                throw new UsageException("--bees is missing: count them, or name the measure that was taken with --measure (for example half-cup-us).");
            number = known.UsualBees.Value;
        }
        else if (BeesField.Read(bees, how, decimalComma: false, out number) is { } problem)
        {
            throw new UsageException($"--bees '{bees}': {problem.Replace("bees_basis", "--basis", StringComparison.Ordinal)}");
        }

        var spreads = BeeSpreads.Of(knowledge);
        return how switch
        {
            BeeBasis.Counted => JarBees.Counted((int)number),
            BeeBasis.Weighed => new JarBees(how, number, spreads.Weighed),
            _ => new JarBees(how, number, known?.LogSpread.Value ?? spreads.Assumed, known?.Id),
        };
    }

    private static JarMeasure? MeasureOf(string? id, KnowledgeBase knowledge)
    {
        if (id is null)
            return null;
        return knowledge.JarMeasures.TryGet(id, out var measure)
            ? measure
            : throw new UsageException($"--measure '{id}': there is no such measure. Known are {string.Join(", ", knowledge.JarMeasures.Ids)}.");
    }
}
