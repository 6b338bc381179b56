using System.Globalization;
using Foundress.Book.Importing;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Web.Kit;
using Foundress.Web.Shell;

namespace Foundress.Web.Pages.Rounds;

/// <summary>The number of bees in a jar: a measure taken as a number, or counted, or weighed.</summary>
/// <param name="knowledge">Measures and the weight of a bee.</param>
/// <param name="settings">The keeper's settings.</param>
/// <param name="method">The way of counting.</param>
public sealed class JarBeesForm(KnowledgeBase knowledge, PolicyRecord settings, CountingMethod method)
{
    /// <summary>Bees were counted.</summary>
    public const string Counted = "counted";

    /// <summary>Bees were weighed.</summary>
    public const string Weighed = "weighed";

    /// <summary>What numbers of bees are allowed.</summary>
    public static NumberRule BeesRule { get; } = new(1, JarLimits.MostBees);

    /// <summary>What weights are allowed, in grams.</summary>
    public static NumberRule GramsRule { get; } = new(0.1, 600, 1);

    /// <summary>The measure that is taken when nobody counts or weighs.</summary>
    public JarMeasure Measure => knowledge.JarMeasures[settings.JarMeasure ?? method.DefaultJarId ?? knowledge.JarMeasures[0].Id];

    /// <summary>How many bees it is taken as: the keeper's own scoop where it was calibrated.</summary>
    public double AssumedBees => settings.ScoopBees ?? Measure.UsualBees.Value;

    /// <summary>An assumed jar.</summary>
    public JarBees Assumed => new(
        BeeBasis.Assumed, AssumedBees, settings.ScoopLogSpread ?? Measure.LogSpread.Value, settings.ScoopBees is null ? Measure.Id : null);

    /// <summary>What a bee is taken to weigh, in milligrams.</summary>
    public double MilligramsPerBee => knowledge.BeeWeights["rule-of-thumb"].Weight.Value;

    /// <summary>Reads what was typed.</summary>
    /// <param name="draft">Fields <c>how</c>, <c>bees</c> and <c>grams</c>.</param>
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
                    return ("bees", "No number is given. Type how many bees were in the jar.");
                bees = JarBees.Counted((int)counted);
                return null;
            case Weighed:
                if (NumberText.Read(draft["grams"], GramsRule, CultureInfo.CurrentCulture, out number) is { } bad)
                    return ("grams", bad);
                if (number is not { } grams)
                    return ("grams", "No weight is given. Type what the bees of the jar weigh, in grams.");
                var weighed = JarBees.Weighed(grams, MilligramsPerBee, BeeSpreads.Of(knowledge, settings).Weighed);
                if (weighed.Count is < 1 or > JarLimits.MostBees)
                    return ("grams", $"{draft["grams"].Trim()} g would be about {weighed.Count:0} bees. A jar holds 1 to {JarLimits.MostBees}: check the weight.");
                bees = weighed;
                return null;
            default:
                bees = Assumed;
                return null;
        }
    }
}
