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
            throw UsageException.OfValue("--basis", basis, JarCommandTexts.BasisWords);
        if (known is not null && how != BeeBasis.Assumed)
            throw new UsageException(JarCommandTexts.FormatMeasureIsAssumed(measure, basis));
        double number;
        if (bees is null)
        {
            if (known is null)
                throw new UsageException(JarCommandTexts.BeesMissing);
            number = known.UsualBees.Value;
        }
        else if (BeesField.Read(bees, how, decimalComma: false, out number) is { } problem)
        {
            throw UsageException.OfValue("--bees", bees, problem.Replace("bees_basis", "--basis", StringComparison.Ordinal));
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
            return sampleBees is null && sampleGrams is null && !apart ? null : throw new UsageException(JarCommandTexts.GramsMissing);
        var weight = Grams("--grams", grams);
        if (sampleBees is null && sampleGrams is null)
        {
            var usual = knowledge.BeeWeights["rule-of-thumb"].Weight.Value;
            return Checked(JarBees.Weighed(weight, usual, BeeSpreads.Of(knowledge).Weighed), grams);
        }

        if (sampleBees is null)
            throw new UsageException(JarCommandTexts.SampleBeesMissing);
        if (sampleGrams is null)
            throw new UsageException(JarCommandTexts.SampleGramsMissing);
        if (BeesField.Read(sampleBees, BeeBasis.Counted, decimalComma: false, out var bees) is { } problem)
            throw UsageException.OfValue("--sample-bees", sampleBees, problem);
        if (bees < 2)
            throw UsageException.OfValue("--sample-bees", sampleBees, JarCommandTexts.FormatSampleTooFew(knowledge.Weighing.SampleBees.Value.ToString("0", CultureInfo.InvariantCulture)));
        var lot = Grams("--sample-grams", sampleGrams);
        if (!apart && lot > weight)
            throw UsageException.OfValue("--sample-grams", sampleGrams, JarCommandTexts.FormatSampleTooHeavy(grams));
        try
        {
            return Checked(JarBees.Weighed(weight, new WeighedSample((int)bees, lot, fromJar: !apart), knowledge.Weighing.ToWeighing()), grams);
        }
        catch (ArgumentOutOfRangeException error)
        {
            throw UsageException.OfValue("--grams", grams, JarCommandTexts.WeightsDisagree, error);
        }
    }

    private static JarBees Checked(JarBees bees, string grams) => bees.Count is >= 1 and <= JarLimits.MostBees
        ? bees
        : throw UsageException.OfValue("--grams", grams, JarCommandTexts.FormatTooManyBees(bees.Count.ToString("0", CultureInfo.InvariantCulture), JarLimits.MostBees));

    private static double Grams(string option, string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var grams) && grams is > 0 and <= 1000
            ? grams
            : throw UsageException.OfValue(option, text, JarCommandTexts.GramsRange);

    private static JarMeasure? MeasureOf(string? id, KnowledgeBase knowledge)
    {
        if (id is null)
            return null;
        return knowledge.JarMeasures.TryGet(id, out var measure)
            ? measure
            : throw UsageException.OfValue("--measure", id, JarCommandTexts.FormatMeasureUnknown(string.Join(", ", knowledge.JarMeasures.Ids)));
    }
}
