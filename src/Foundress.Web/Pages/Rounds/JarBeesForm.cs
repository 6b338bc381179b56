using System.Globalization;
using Foundress.Book.Calibrating;
using Foundress.Book.Importing;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science.Estimation;
using Foundress.Web.Kit;
using Foundress.Web.Shell;

namespace Foundress.Web.Pages.Rounds;

/// <summary>The number of bees in a jar: a measure taken as a number, or counted, or weighed.</summary>
/// <param name="knowledge">Measures and the weight of a bee.</param>
/// <param name="state">The open book: settings and counted jars.</param>
/// <param name="author">Who fills the jars.</param>
/// <param name="method">The way of counting.</param>
public sealed class JarBeesForm(KnowledgeBase knowledge, BookState state, string author, CountingMethod method)
{
    /// <summary>Bees were counted.</summary>
    public const string Counted = "counted";

    /// <summary>Bees were weighed.</summary>
    public const string Weighed = "weighed";

    /// <summary>What numbers of bees are allowed.</summary>
    public static NumberRule BeesRule { get; } = new(1, JarLimits.MostBees);

    /// <summary>What numbers of counted and weighed bees are allowed.</summary>
    public static NumberRule SampleRule { get; } = new(2, JarLimits.MostBees);

    /// <summary>What weights are allowed, in grams.</summary>
    public static NumberRule GramsRule { get; } = new(0.1, 600, 1);

    private readonly JarScoops _scoops = new(state, knowledge);

    /// <summary>The measure the bees are taken with: its id.</summary>
    public string Measure => _scoops.UsualMeasure(method);

    /// <summary>Its name for people.</summary>
    public string MeasureName => _scoops.NameOf(Measure);

    /// <summary>An assumed jar: as the writer's own counted jars of that measure teach, where there are enough.</summary>
    public JarBees Assumed => _scoops.Assumed(author, Measure);

    /// <summary>What a bee is taken to weigh, in milligrams.</summary>
    public double MilligramsPerBee => knowledge.BeeWeights["rule-of-thumb"].Weight.Value;

    /// <summary>Reads what was typed.</summary>
    /// <param name="draft">Fields <c>how</c>, <c>bees</c>, <c>grams</c>, <c>samplebees</c> and <c>samplegrams</c>.</param>
    /// <param name="bees">The bees; null when something is wrong.</param>
    /// <returns>The field that is wrong and what to do about it; null when nothing is.</returns>
    public (string Field, string Problem)? Read(FormDraft draft, out JarBees? bees)
    {
        bees = null;
        double? number;
        switch (draft["how"])
        {
            case Counted:
                if (NumberText.Read(draft["bees"], BeesRule, CultureInfo.CurrentCulture, out number) is { } wrong)
                    return ("bees", wrong);
                if (number is not { } counted)
                    return ("bees", CollectTexts.BeesMissing);
                bees = JarBees.Counted((int)counted, Measure);
                return null;
            case Weighed:
                if (NumberText.Read(draft["grams"], GramsRule, CultureInfo.CurrentCulture, out number) is { } bad)
                    return ("grams", bad);
                if (number is not { } grams)
                    return ("grams", CollectTexts.WeightMissing);
                if (ReadSample(draft, grams, out var sample) is { } off)
                    return off;
                var weighed = sample is { } lot
                    ? JarBees.Weighed(grams, lot, knowledge.Weighing.ToWeighing())
                    : JarBees.Weighed(grams, MilligramsPerBee, BeeSpreads.Of(knowledge, state.Policy).Weighed);
                if (weighed.Count is < 1 or > JarLimits.MostBees)
                    return ("grams", CollectTexts.FormatWeightOff(draft["grams"].Trim(), weighed.Count.ToString("0", CultureInfo.CurrentCulture), JarLimits.MostBees));
                bees = weighed;
                return null;
            default:
                bees = Assumed;
                return null;
        }
    }

    // Bees of this very jar that were counted and weighed; both fields empty for none.
    private static (string Field, string Problem)? ReadSample(FormDraft draft, double grams, out WeighedSample? sample)
    {
        sample = null;
        if (NumberText.Read(draft["samplebees"], SampleRule, CultureInfo.CurrentCulture, out var bees) is { } wrong)
            return ("samplebees", wrong);
        if (NumberText.Read(draft["samplegrams"], GramsRule, CultureInfo.CurrentCulture, out var weight) is { } bad)
            return ("samplegrams", bad);
        if (bees is null && weight is null)
            return null;
        if (bees is not { } counted)
            return ("samplebees", CollectTexts.SampleBeesMissing);
        if (weight is not { } lot)
            return ("samplegrams", CollectTexts.SampleWeightMissing);
        if (lot > grams)
            return ("samplegrams", CollectTexts.SampleTooHeavy);
        if (grams * counted / lot < 1)
            return ("samplegrams", CollectTexts.SampleTooFew);
        sample = new WeighedSample((int)counted, lot, fromJar: true);
        return null;
    }
}
