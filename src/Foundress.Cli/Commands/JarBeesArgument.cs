using System.Globalization;
using Foundress.Book.Importing;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Cli.Running;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Estimation;

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

    /// <summary>A jar weighed with counted and weighed bees; null when no weight is given.</summary>
    internal static JarBees? ReadWeighed(string? grams, string? sampleBees, string? sampleGrams, bool apart, KnowledgeBase knowledge)
    {
        if (grams is null)
            return sampleBees is null && sampleGrams is null && !apart ? null : throw new UsageException("--grams is missing: give the weight of all bees of the jar.");
        var weight = Grams("--grams", grams);
        if (sampleBees is null && sampleGrams is null)
        {
            var usual = knowledge.BeeWeights["rule-of-thumb"].Weight.Value;
            return Checked(JarBees.Weighed(weight, usual, BeeSpreads.Of(knowledge).Weighed), grams);
        }

        if (sampleBees is null)
            throw new UsageException("--sample-bees is missing: give how many of the bees were counted and weighed.");
        if (sampleGrams is null)
            throw new UsageException("--sample-grams is missing: give what the counted bees weigh.");
        if (BeesField.Read(sampleBees, BeeBasis.Counted, decimalComma: false, out var bees) is { } problem)
            throw new UsageException($"--sample-bees '{sampleBees}': {problem}");
        if (bees < 2)
            throw new UsageException($"--sample-bees '{sampleBees}': Count and weigh at least two bees; about {knowledge.Weighing.SampleBees.Value:0} are usual.");
        var lot = Grams("--sample-grams", sampleGrams);
        if (!apart && lot > weight)
            throw new UsageException($"--sample-grams '{sampleGrams}': more than the {grams} g of the jar they are part of. Check both, or add --sample-apart when they were other bees.");
        try
        {
            return Checked(JarBees.Weighed(weight, new WeighedSample((int)bees, lot, fromJar: !apart), knowledge.Weighing.ToWeighing()), grams);
        }
        catch (ArgumentOutOfRangeException error)
        {
            throw new UsageException($"--grams '{grams}': these weights do not go together: the jar would hold less than a bee, or the scale is too coarse for them.", error);
        }
    }

    private static JarBees Checked(JarBees bees, string grams) => bees.Count is >= 1 and <= JarLimits.MostBees
        ? bees
        : throw new UsageException(string.Create(CultureInfo.InvariantCulture, $"--grams '{grams}': that makes {bees.Count:0} bees. A jar holds 1 to {JarLimits.MostBees}: check the weights and their unit."));

    private static double Grams(string option, string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var grams) && grams is > 0 and <= 1000
            ? grams
            : throw new UsageException($"{option} '{text}': Write a weight in grams above 0 and up to 1000, with a decimal point, for example 31.5.");

    private static JarMeasure? MeasureOf(string? id, KnowledgeBase knowledge)
    {
        if (id is null)
            return null;
        return knowledge.JarMeasures.TryGet(id, out var measure)
            ? measure
            : throw new UsageException($"--measure '{id}': there is no such measure. Known are {string.Join(", ", knowledge.JarMeasures.Ids)}.");
    }
}
